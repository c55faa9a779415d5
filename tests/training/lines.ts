import { cutOuts, readCuts, type CutName } from '../../src/reader/cut-outs.ts'
import { clampBox, type Box } from '../../src/reader/picture.ts'
import { letterMark } from '../../src/reader/vote.ts'
import { figures, printedWords, segmentWords } from './figures.ts'
import type { TrainingLine } from './lstmf.ts'
import { seededRandom, type Random } from './random.ts'
import { scene } from './scene.ts'
import { styles, type Style } from './styles.ts'

const voices: readonly (readonly [CutName, number])[] = readCuts.map((name) => [name, 1])

/**
 * The courses of training, each with its cuts and their shares, and how many lines share a box, since drawing and cutting cost more than a line.
 * Figures are learned from the tidiest cuts, then from those that vote; last come words, which a person may point at by mistake.
 */
const courses = {
  figures: { cuts: [['band', 60], ['level', 25], ['raw', 15]], linesOfABox: 1 },
  voices: { cuts: voices, linesOfABox: 3 },
  words: { cuts: voices, linesOfABox: 3 },
} as const satisfies Record<string, { cuts: readonly (readonly [CutName, number])[]; linesOfABox: number }>
export type Course = keyof typeof courses

/** Lines cut from the scene of a seed, from boxes as a person would put them. */
export const linesOf = async (seed: number, count: number, course: Course): Promise<TrainingLine[]> => {
  const random = seededRandom(seed ^ 0x5bd1e995)
  const style = course === 'words' ? random.pick(['print', 'dot'] as const) : random.pick(styles)
  const text = course === 'words' ? letters(random) : shown(random, style)
  const { pixels, box } = await scene(seed, { style, text })
  const { cuts, linesOfABox } = courses[course]
  const lines: TrainingLine[] = []
  for (let i = 0; i < count; i += linesOfABox) {
    const guide = clampBox(looseBox(random, box), pixels)
    if (!guide) continue
    const cut = cutOuts(pixels, guide)
    const left = new Map<CutName, number>(cuts)
    for (let j = 0; j < linesOfABox; j++) {
      const chosen = pickByShare(random, left)
      left.delete(chosen)
      lines.push({ image: cut.line(chosen), text: label(text) })
    }
  }
  return lines
}

const pickByShare = (random: Random, shares: ReadonlyMap<CutName, number>): CutName => {
  let at = random.unit() * [...shares.values()].reduce((sum, share) => sum + share, 0)
  for (const [name, share] of shares) if ((at -= share) < 0) return name
  return [...shares.keys()].at(-1)!
}

/** One mark a letter, so that a word comes out as a word and not as the figures it resembles; one alone for a page of words, whose letters are too small to tell in one line. */
const label = (text: string): string => (text.includes('\n') ? letterMark : text.replace(/[^\d.-]/g, letterMark))

/** Mostly numbers; now and then a word, as displays show in trouble. */
const shown = (random: Random, style: Style): string => {
  const kind = random.unit()
  if (kind >= 0.08) return figures(random)
  if (kind < 0.025) return Array.from({ length: random.whole(2, 4) }, () => Array.from({ length: random.whole(1, 3) }, () => random.pick(printedWords)).join(' ')).join('\n')
  if (style !== 'print' && style !== 'dot') return random.pick(segmentWords)
  return random.pick(printedWords.filter((word) => word.length >= 2 && /^[A-Za-z]+$/.test(word)))
}

/** A word that is none, of mostly of letters that are no figure's double. */
const letters = (random: Random): string => {
  const from = random.pick(['acdefhkmnpqrtuvwxy', 'ACDEFGHJKMNPQRTUVWXY'])
  const doubles = random.pick(['', from === from.toLowerCase() ? 'bgilosz' : 'BILOSZ'])
  const word = Array.from({ length: random.whole(3, 9) }, () => random.pick([...from, ...doubles])).join('')
  return random.chance(0.2) && from === from.toLowerCase() ? word[0]!.toUpperCase() + word.slice(1) : word
}

/** As a person frames it: 0 to 35 % too large on each side, never quite centred. */
const looseBox = (random: Random, box: Box): Box => {
  const [left, right, top, bottom] = [random.between(0, 0.35), random.between(0, 0.35), random.between(0.02, 0.35), random.between(0.02, 0.35)]
  return { x: box.x - box.width * left, y: box.y - box.height * top, width: box.width * (1 + left + right), height: box.height * (1 + top + bottom) }
}
