import { beforeAll, describe, expect, it } from 'vitest'
import { growBox, type Box } from '../../src/reader/picture.ts'
import { readMeter, type MeterReading } from '../../src/reader/reader.ts'
import type { Recognise } from '../../src/reader/recognised.ts'
import { openTerminalReader } from '../../src/terminal/reader-engine.ts'
import { looseness, seeds, setScene } from '../training/evaluate.ts'
import { scene } from '../training/scene.ts'
import { cleanDisplay, wholeOf } from './drawing.ts'
import { blurred, useless, words, type Useless } from './pictures.ts'

const middle: Box = { x: 40, y: 90, width: 400, height: 180 }
const never: Recognise = () => Promise.reject(new Error('a poor picture must not cost a pass'))

describe('the meter reader', () => {
  let recognise: Recognise

  beforeAll(async () => {
    recognise = await openTerminalReader()
  })

  const clean = async (text: string, expectation: Parameters<typeof readMeter>[2] = null): Promise<MeterReading> => {
    const pixels = cleanDisplay(text, 3)
    return readMeter(pixels, wholeOf(pixels), expectation, recognise)
  }

  it('is certain of a clean display and gives its number, text and cut-out', async () => {
    const reading = await clean('28.53')
    expect(reading).toMatchObject({ text: '28.53', value: 28.53, certain: true, doubts: [] })
    expect(reading.cutOut?.height).toBe(48)
    expect(reading.passes.map((pass) => pass.text)).toEqual(reading.passes.map(() => '28.53'))
  })

  it('keeps the zeros that the instrument shows', async () => {
    expect(await clean('28.50')).toMatchObject({ text: '28.50', value: 28.5 })
  })

  it('is not certain of what the check does not expect, and says why', async () => {
    expect(await clean('28.53', { minimum: 0, maximum: 14, decimals: 2 })).toMatchObject({ text: '28.53', certain: false, doubts: [{ at: null, why: 'outOfRange' }] })
    expect((await clean('28.53', { minimum: 0, maximum: 60, decimals: 1 })).doubts).toEqual([{ at: null, why: 'wrongDecimals' }])
    expect((await clean('28.53', { minimum: 0, maximum: 60, recent: [20.1, 20.2, 20.0] })).doubts).toEqual([{ at: null, why: 'unlikeRecent' }])
    expect((await clean('28.53', { minimum: 0, maximum: 60, decimals: 2, recent: [28.4, 28.5, 28.6] })).certain).toBe(true)
  })

  it('asks no further where four passes agree, and is certain of five in six, not of four in five', async () => {
    const pixels = cleanDisplay('28.53', 3)
    const asking = (answers: readonly string[]) => {
      let pass = 0
      const recognised: Recognise = () => Promise.resolve({ symbols: [...answers[pass++]!].map((text) => ({ text, confidence: 0.97 })) })
      return readMeter(pixels, wholeOf(pixels), null, recognised)
    }
    const [right, other] = ['28.53', '28.58']
    expect(await asking([right, right, right, right])).toMatchObject({ text: right, certain: true })
    const outvoted = await asking([right, other, right, right, right, right])
    expect(outvoted).toMatchObject({ text: right, certain: true })
    expect(outvoted.passes).toHaveLength(6)
    expect(await asking([right, other, right, right, right, other])).toMatchObject({ text: right, certain: false, doubts: [{ at: 4, why: 'passesDiffer' }] })
    expect((await asking([right, other, right, other, right])).passes).toHaveLength(5)
  })

  it('marks the figure that the passes do not agree on', async () => {
    let pass = 0
    const wavering: Recognise = () => Promise.resolve({ symbols: [...(pass++ % 2 === 1 ? '28.83' : '28.53')].map((text) => ({ text, confidence: 0.97 })) })
    const pixels = cleanDisplay('28.53', 3)
    expect(await readMeter(pixels, wholeOf(pixels), null, wavering)).toMatchObject({ text: '28.53', certain: false, doubts: [{ at: 3, why: 'passesDiffer' }] })
  })

  it('is not certain when the segments show another figure than every pass', async () => {
    const mistaken: Recognise = () => Promise.resolve({ symbols: [...'26.53'].map((text) => ({ text, confidence: 0.99 })) })
    const pixels = cleanDisplay('28.53', 3)
    expect(await readMeter(pixels, wholeOf(pixels), null, mistaken)).toMatchObject({ text: '26.53', certain: false, doubts: [{ at: 1, why: 'segmentsDiffer' }] })
  })

  it('tells what the display is made of, and does not hear the segments where it is known to be dots or print', async () => {
    const pixels = cleanDisplay('28.53', 3)
    expect((await clean('28.53')).kind).toBe('segments')
    const otherwise: Recognise = () => Promise.resolve({ symbols: [...'26.53'].map((text) => ({ text, confidence: 0.99 })) })
    expect((await readMeter(pixels, wholeOf(pixels), null, otherwise)).kind).toBe('other')
    const known = { minimum: 0, maximum: 60, kind: 'other' } as const
    expect(await readMeter(pixels, wholeOf(pixels), known, otherwise)).toMatchObject({ text: '26.53', certain: true, kind: null })
  })

  it.each<[Useless, MeterReading['refusal']]>([
    ['black', 'tooDark'],
    ['lens cap', 'tooDark'],
    ['bare wall', 'empty'],
    ['bright light', 'empty'],
  ])('refuses %s before any pass, as %s', async (kind, refusal) => {
    expect(await readMeter(useless(kind, 1), middle, null, never)).toMatchObject({ text: null, value: null, certain: false, refusal })
  })

  it('reads nothing into a wall in a shade', async () => {
    for (let seed = 1; seed <= 5; seed++) expect((await readMeter(useless('bare wall in a shade', seed), middle, null, recognise)).text).toBeNull()
  })

  it('refuses figures too blurred to read', async () => {
    for (let seed = 1; seed <= 5; seed++) {
      const { pixels, box } = await scene(700_000 + seed, { style: 'lcd' })
      const soft = blurred(pixels, Math.round(box.height * 0.15))
      expect(await readMeter(soft, growBox(box, 0.25), null, never)).toMatchObject({ text: null, refusal: 'blurred' })
    }
  })

  it('never takes words for a certain number', async () => {
    for (let seed = 1; seed <= 5; seed++)
      for (const kind of ['words', 'page of words'] as const) {
        const reading = await readMeter(useless(kind, seed), middle, null, recognise)
        expect(reading.certain, `${kind} ${seed} read as ${String(reading.text)}`).toBe(false)
      }
    for (const [index, word] of words.entries())
      expect(await readMeter(useless('words', index + 1), { x: 40, y: 130, width: 400, height: 100 }, null, recognise), word).toMatchObject({ text: null, refusal: 'noFigures' })
  })

  it('tries the other polarity where no two passes agree, and is not certain of what that says', async () => {
    const pixels = cleanDisplay('28.53', 3)
    const answers = ['1', '2', '3', '4', '5', ...Array.from({ length: 5 }, () => '28.53')]
    const turning: Recognise = () => Promise.resolve({ symbols: [...answers.shift()!].map((text) => ({ text, confidence: 0.97 })) })
    expect(await readMeter(pixels, wholeOf(pixels), null, turning)).toMatchObject({ text: '28.53', certain: false })
    // A pale display in a dark case, whose polarity the strokes tell wrongly.
    const drawn = await setScene(seeds.validation, 91)
    expect(await readMeter(drawn.pixels, growBox(drawn.box, looseness), null, recognise)).toMatchObject({ text: '663.208', certain: false })
  })

  it('refuses a word, whatever number is seen in it, where as many passes see a word', async () => {
    const pixels = cleanDisplay('28.53', 3)
    const answers = ['516622', 'xxxxxxx', '516622', 'xx16x2x', '51662']
    const wordy: Recognise = () => Promise.resolve({ symbols: [...answers.shift()!].map((text) => ({ text, confidence: 0.9 })) })
    expect(await readMeter(pixels, wholeOf(pixels), null, wordy)).toMatchObject({ text: null, certain: false, refusal: 'noFigures' })
  })

  it('refuses a box beside the picture, and a picture beyond 50 megapixels before it looks at a pixel', async () => {
    const pixels = cleanDisplay('28.53', 3)
    expect((await readMeter(pixels, { x: 700, y: 0, width: 100, height: 50 }, null, never)).refusal).toBe('boxOutside')
    expect((await readMeter(pixels, { x: 0, y: 0, width: 5, height: 5 }, null, never)).refusal).toBe('boxOutside')
    expect((await readMeter({ width: 8200, height: 6200, data: new Uint8ClampedArray(0) }, wholeOf(pixels), null, never)).refusal).toBe('pictureTooLarge')
  })
})
