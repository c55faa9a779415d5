import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import sharp from 'sharp'
import { createWorker, OEM, PSM } from 'tesseract.js'
import type { Box, Pixels } from '../../src/reader/picture.ts'

/** What stands in a picture after tesseract.js as it comes, with its English model. */
export interface EnglishModel {
  /** All the words of the whole picture. */
  whole(pixels: Pixels): Promise<string>
  /** The guide box alone, as one line, figures, point and minus allowed. */
  boxed(pixels: Pixels, box: Box): Promise<string>
  end(): Promise<unknown>
}

const png = ({ width, height, data }: Pixels, box?: Box): Promise<Buffer> => {
  const picture = sharp(data, { raw: { width, height, channels: 4 } }).removeAlpha()
  return (box ? picture.extract({ left: box.x, top: box.y, width: box.width, height: box.height }) : picture).png().toBuffer()
}

/** The model lies in a package for tests alone; nothing is fetched and nothing kept. */
export const openEnglishModel = async (): Promise<EnglishModel> => {
  const folder = join(dirname(createRequire(import.meta.url).resolve('@tesseract.js-data/eng/package.json')), '4.0.0_best_int')
  // Said, since it would guess a resolution for each picture and write to the terminal about it.
  const start = (params: Record<string, string>) =>
    createWorker('eng', OEM.LSTM_ONLY, { langPath: folder, cacheMethod: 'none', gzip: true }).then(async (worker) => {
      await worker.setParameters({ ...params, user_defined_dpi: '150' })
      return worker
    })
  const [whole, boxed] = [await start({ tessedit_pageseg_mode: PSM.AUTO }), await start({ tessedit_pageseg_mode: PSM.SINGLE_LINE, tessedit_char_whitelist: '0123456789.-' })]
  return {
    whole: async (pixels) => (await whole.recognize(await png(pixels))).data.text.trim(),
    boxed: async (pixels, box) => (await boxed.recognize(await png(pixels, box))).data.text.trim(),
    end: () => Promise.all([whole.terminate(), boxed.terminate()]),
  }
}
