import { clampBox, growBox } from '../../src/reader/picture.ts'
import { readMeter } from '../../src/reader/reader.ts'
import type { Recognise } from '../../src/reader/recognised.ts'
import { openTerminalReader } from '../../src/terminal/reader-engine.ts'
import { looseness, scores, seeds, setScene, type Evaluated } from '../training/evaluate.ts'
import { styles } from '../training/styles.ts'
import { openEnglishModel } from './english-model.ts'
import { median, millisecondsText, type Figure } from './figure.ts'

const percent = (count: number, of: number): string => `${((100 * count) / of).toFixed(1)} %`
/** A phone is taken for a quarter as fast as this machine. */
const slowdown = 4

/** Our reader and tesseract.js with its English model, one after the other on each of the same drawn pictures. */
export const meterReader = async (pictures: number): Promise<Figure[]> => {
  const recognise = await openTerminalReader()
  const passes: number[] = []
  const timed: Recognise = async (line) => {
    const began = performance.now()
    const seen = await recognise(line)
    passes.push(performance.now() - began)
    return seen
  }
  const english = await openEnglishModel()
  const all: (Evaluated & { inBox: string; inPicture: string })[] = []
  try {
    for (let index = 0; index < pictures; index++) {
      const { pixels, box, ...scene } = await setScene(seeds.evaluation, index)
      const guide = clampBox(growBox(box, looseness), pixels)
      if (!guide) throw new Error(`scene ${scene.seed} has no figures on it`)
      const began = performance.now()
      const reading = await readMeter(pixels, guide, null, timed)
      const milliseconds = performance.now() - began
      all.push({ scene, reading, milliseconds, inBox: await english.boxed(pixels, guide), inPicture: await english.whole(pixels) })
    }
  } finally {
    await english.end()
  }
  const score = scores(all)
  const of = (style: (typeof styles)[number] | 'all') => all.filter(({ scene }) => style === 'all' || scene.style === style)
  const boxed = (style: Parameters<typeof of>[0]): number => of(style).filter(({ scene, inBox }) => inBox === scene.text).length
  const found = all.filter(({ scene, inPicture }) => inPicture.split(/\s+/).includes(scene.text)).length
  const exact = (style: Parameters<typeof of>[0], goal: number, note: string): Figure => ({
    what: style === 'all' ? `meter reader, exact, ${pictures} drawn pictures never trained on, loose box` : `— ${style}`,
    figure: percent(score[style].exact, score[style].pictures),
    against: `${style === 'all' ? 'tesseract.js, English model, same box: ' : ''}${percent(boxed(style), score[style].pictures)}${note}`,
    ratio: null,
    goal: `≥ ${goal} %`,
    isMet: score[style].exact >= (goal / 100) * score[style].pictures,
  })
  const { certain, certainWrong } = score.all
  const pass = median(passes)
  return [
    exact('all', 97, `, whole picture: ${percent(found, pictures)}`),
    ...styles.map((style) => exact(style, 93, '')),
    { what: 'meter reader, called certain', figure: percent(certain, pictures), against: '', ratio: null, goal: '≥ 85 %', isMet: certain >= 0.85 * pictures },
    { what: 'meter reader, wrong among the certain', figure: percent(certainWrong, certain), against: '', ratio: null, goal: '≤ 0.5 %', isMet: certainWrong <= 0.005 * certain, note: `${certainWrong} of ${certain}` },
    {
      what: `meter reader, a pass on a phone ${slowdown} × slower`,
      figure: millisecondsText(slowdown * pass),
      against: '',
      ratio: null,
      goal: '≤ 80 ms',
      isMet: slowdown * pass <= 80,
      note: `worked out from ${millisecondsText(pass)} here; a reading has four to six passes, ${millisecondsText(median(all.map(({ milliseconds }) => milliseconds)))} with all else`,
    },
  ]
}
