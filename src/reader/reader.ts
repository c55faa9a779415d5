import { clearMargin, contradicts } from './contradiction.ts'
import { cutOuts, decidingCut, readCuts, type CutName, type CutOuts } from './cut-outs.ts'
import { differences } from './differences.ts'
import { misfits, type DisplayKind, type Expectation, type Misfit } from './expectation.ts'
import { clampBox, type Box, type GrayImage, type Pixels } from './picture.ts'
import { mostPixels, refusalOf, type ReadingRefusal } from './quality.ts'
import type { Recognise } from './recognised.ts'
import { readSegments, type SegmentReading } from './segments.ts'
import { isWord, passOf, vote, type Pass, type Vote } from './vote.ts'

/** A place in `text` that a person should look at; the whole number when `at` is null. */
export interface Doubt {
  at: number | null
  why: 'passesDiffer' | 'unsure' | 'segmentsDiffer' | Misfit
}

export interface MeterReading {
  /** The number as shown, `7.42`, with its zeros; null when refused. */
  text: string | null
  value: number | null
  /** Enough passes agree, each figure is sure, the segments do not contradict, and it fits what the check expects. */
  certain: boolean
  doubts: Doubt[]
  /** What was read, turned level, for showing beside the number. */
  cutOut: GrayImage | null
  passes: Pass[]
  /** What the display is made of, where the geometry tells: it reads the very number, or nothing but it speaks against the number. */
  kind: DisplayKind | null
  refusal?: ReadingRefusal
}

/** So many passes that all agree are enough. */
const enough = 4
/**
 * Of more passes than that, so many may dissent: five of six must agree. Set on validation scenes so that fewer than 1 in 200 certain numbers is wrong;
 * four of five was wrong three times as often, five of five left a quarter uncertain.
 */
const mostDissenting = 1
/** A figure surer than this, in the pass that sees it best, counts as sure. */
const sure = 0.8
/** No pass surer than this: whatever it is, it is no number. */
const hopeless = 0.3

/**
 * Reads the number in the guide box. `recognise` is asked for four to six cuts of the box; what enough of them agree on, the geometry of
 * the segments does not contradict and the check expects is certain, everything else is for a person to check.
 */
export const readMeter = async (pixels: Pixels, box: Box, expectation: Expectation | null, recognise: Recognise): Promise<MeterReading> => {
  if (pixels.width * pixels.height > mostPixels) return refused('pictureTooLarge')
  const inside = clampBox(box, pixels)
  if (!inside) return refused('boxOutside')
  const cut = cutOuts(pixels, inside)
  const poor = refusalOf(cut, cut.texture)
  if (poor) return refused(poor, cut)
  const passes: Pass[] = []
  const read = async (name: CutName): Promise<void> => void passes.push(passOf(name, await recognise(cut.line(name))))
  for (const name of readCuts) {
    if (passes.length === enough && dissenting(passes) === 0) break
    await read(name)
  }
  if (passes.length > enough && dissenting(passes) <= mostDissenting) await read(decidingCut)
  const segments = cut.band ? readSegments(cut.level, cut.band) : null
  const won = vote(passes, segments?.text ?? null)
  // A word seen as often as the number: figures lie in most words, letters in no number.
  if (!won || won.confidence < hopeless || passes.filter(({ text }) => isWord(text)).length >= won.agreeing) return refused('noFigures', cut, passes)
  const doubts = doubtsOf(won, passes, segments, expectation)
  return { text: won.text, value: Number(won.text), certain: doubts.length === 0, doubts, cutOut: cut.line('band'), passes, kind: kindOf(won, segments, doubts) }
}

/** How many passes do not read what most read; all of them where most read no number. */
const dissenting = (passes: readonly Pass[]): number => passes.length - (vote(passes, null)?.agreeing ?? 0)

const refused = (refusal: ReadingRefusal, cut?: CutOuts, passes: Pass[] = []): MeterReading => ({
  text: null,
  value: null,
  certain: false,
  doubts: [],
  cutOut: cut?.line('band') ?? null,
  passes,
  kind: null,
  refusal,
})

const kindOf = ({ text }: Vote, segments: SegmentReading | null, doubts: readonly Doubt[]): DisplayKind | null => {
  if (segments && segments.margin >= clearMargin && segments.text === text) return 'segments'
  return doubts.length > 0 && doubts.every(({ why }) => why === 'segmentsDiffer') ? 'other' : null
}

const doubtsOf = (won: Vote, passes: readonly Pass[], segments: SegmentReading | null, expectation: Expectation | null): Doubt[] => {
  const doubts: Doubt[] = []
  const doubt = (at: number | null, why: Doubt['why']): void => {
    if (!doubts.some((one) => one.at === at && one.why === why)) doubts.push({ at, why })
  }
  const agreeing = passes.filter((pass) => pass.text === won.text)
  if (passes.length - agreeing.length > mostDissenting) for (const pass of passes) for (const at of differences(won.text, pass.text)) doubt(at, 'passesDiffer')
  for (let at = 0; at < won.text.length; at++) if (agreeing.every((pass) => (pass.symbols[at]?.confidence ?? 0) < sure)) doubt(at, 'unsure')
  if (segments && contradicts(won.text, segments, expectation?.kind)) {
    const places = differences(won.text, segments.text)
    for (const at of places.length > 0 ? places : [null]) doubt(at, 'segmentsDiffer')
  }
  if (expectation) for (const misfit of misfits(won.text, expectation)) doubt(null, misfit)
  return doubts
}
