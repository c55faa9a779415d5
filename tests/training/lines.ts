import { cutOuts } from '../../src/reader/cut-outs.ts'
import { clampBox, type Box } from '../../src/reader/picture.ts'
import { letterMark } from '../../src/reader/vote.ts'
import { figures, printedWords, segmentWords } from './figures.ts'
import type { TrainingLine } from './lstmf.ts'
import { seededRandom, type Random } from './random.ts'
import { scene } from './scene.ts'
import { styles, type Style } from './styles.ts'

/** Lines cut from the scene of a seed, each from a box of its own: band, level and raw cuts as 60 : 25 : 15. */
export const linesOf = async (seed: number, count: number): Promise<TrainingLine[]> => {
  const random = seededRandom(seed ^ 0x5bd1e995)
  const style = random.pick(styles)
  const text = shown(random, style)
  const { pixels, box } = await scene(seed, { style, text })
  const lines: TrainingLine[] = []
  for (let i = 0; i < count; i++) {
    const guide = clampBox(looseBox(random, box), pixels)
    if (!guide) continue
    const cut = cutOuts(pixels, guide)
    const chosen = random.unit()
    lines.push({ image: cut.line(chosen < 0.6 ? 'band' : chosen < 0.85 ? 'level' : 'raw'), text: label(text) })
  }
  return lines
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

/** As a person frames it: 0 to 35 % too large on each side, never quite centred. */
const looseBox = (random: Random, box: Box): Box => {
  const [left, right, top, bottom] = [random.between(0, 0.35), random.between(0, 0.35), random.between(0.02, 0.35), random.between(0.02, 0.35)]
  return { x: box.x - box.width * left, y: box.y - box.height * top, width: box.width * (1 + left + right), height: box.height * (1 + top + bottom) }
}
