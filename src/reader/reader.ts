import { clearMargin, contradicts } from './contradiction.ts'
import { cutOuts, decidingCut, readCuts, type CutOuts } from './cut-outs.ts'
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
 * four of six was wrong four times as often, five of five left a quarter uncertain.
 */
const mostDissenting = 1
/** A figure surer than this, in the pass that sees it best, counts as sure. */
const sure = 0.8
/** No pass surer than this: whatever it is, it is no number. */
const hopeless = 0.3

/**
 * Reads the number in the guide box. `recognise` is asked for four to six cuts of the box, ten where no two agree; what enough of them agree on, the geometry of
 * the segments does not contradict and the check expects is certain, everything else is for a person to check.
 */
export const readMeter = async (pixels: Pixels, box: Box, expectation: Expectation | null, recognise: Recognise): Promise<MeterReading> => {
  if (pixels.width * pixels.height > mostPixels) return refused('pictureTooLarge')
  const inside = clampBox(box, pixels)
  if (!inside) return refused('boxOutside')
  let cut = cutOuts(pixels, inside)
  const poor = refusalOf(cut, cut.texture)
  if (poor) return refused(poor, cut)
  const passes: Pass[] = []
  for (const name of readCuts) {
    if (passes.length === enough && agreeing(passes) === enough) break
    passes.push(passOf(name, await recognise(cut.line(name))))
  }
  if (passes.length > enough && passes.length - agreeing(passes) <= mostDissenting) passes.push(passOf(decidingCut, await recognise(cut.line(decidingCut))))
  let heard: readonly Pass[] = [...passes]
  // No two that agree: the polarity may have been told wrongly. The passes of before still count against certainty.
  if (agreeing(passes) < 2) {
    const other = cutOuts(pixels, inside, true)
    const others: Pass[] = []
    for (const name of readCuts) others.push(passOf(name, await recognise(other.line(name))))
    if (agreeing(others) >= 2) [cut, heard] = [other, others]
    passes.push(...others)
  }
  const segments = cut.strokeBand ? readSegments(cut.strokes, cut.strokeBand) : null
  const won = vote(heard, segments?.text ?? null)
  // A word seen as often as the number: figures lie in most words, letters in no number.
  if (!won || won.confidence < hopeless || heard.filter(({ text }) => isWord(text)).length >= won.agreeing) return refused('noFigures', cut, passes)
  const doubts = doubtsOf(won, passes, segments, expectation)
  return { text: won.text, value: Number(won.text), certain: doubts.length === 0, doubts, cutOut: cut.line('band'), passes, kind: kindOf(won, segments, doubts) }
}

/** How many passes read what most read; none where most read no number. */
const agreeing = (passes: readonly Pass[]): number => vote(passes, null)?.agreeing ?? 0

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
  const same = passes.filter((pass) => pass.text === won.text)
  if (passes.length - same.length > mostDissenting) for (const pass of passes) for (const at of differences(won.text, pass.text)) doubt(at, 'passesDiffer')
  for (let at = 0; at < won.text.length; at++) if (same.every((pass) => (pass.symbols[at]?.confidence ?? 0) < sure)) doubt(at, 'unsure')
  if (segments && contradicts(won.text, segments, expectation?.kind)) {
    const places = differences(won.text, segments.text)
    for (const at of places.length > 0 ? places : [null]) doubt(at, 'segmentsDiffer')
  }
  if (expectation) for (const misfit of misfits(won.text, expectation)) doubt(null, misfit)
  return doubts
}
