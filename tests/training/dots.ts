import type { SKRSContext2D } from '@napi-rs/canvas'
import type { Random } from './random.ts'

/** 5 × 7 dot figures in the usual layout of character modules, two forms where displays differ. Rows from the top, # is lit. */
const glyphs: Record<string, string[][]> = {
  '0': [['.###.', '#...#', '#..##', '#.#.#', '##..#', '#...#', '.###.'], ['.###.', '#...#', '#...#', '#...#', '#...#', '#...#', '.###.']],
  '1': [['..#..', '.##..', '..#..', '..#..', '..#..', '..#..', '.###.'], ['..#..', '.##..', '#.#..', '..#..', '..#..', '..#..', '..#..']],
  '2': [['.###.', '#...#', '....#', '...#.', '..#..', '.#...', '#####'], ['.###.', '#...#', '....#', '..##.', '.#...', '#....', '#####']],
  '3': [['#####', '...#.', '..#..', '...#.', '....#', '#...#', '.###.'], ['.###.', '#...#', '....#', '..##.', '....#', '#...#', '.###.']],
  '4': [['...#.', '..##.', '.#.#.', '#..#.', '#####', '...#.', '...#.'], ['#...#', '#...#', '#...#', '#####', '....#', '....#', '....#']],
  '5': [['#####', '#....', '####.', '....#', '....#', '#...#', '.###.'], ['#####', '#....', '#....', '####.', '....#', '....#', '####.']],
  '6': [['..##.', '.#...', '#....', '####.', '#...#', '#...#', '.###.'], ['.###.', '#....', '#....', '####.', '#...#', '#...#', '.###.']],
  '7': [['#####', '....#', '...#.', '..#..', '.#...', '.#...', '.#...'], ['#####', '....#', '....#', '...#.', '..#..', '..#..', '..#..']],
  '8': [['.###.', '#...#', '#...#', '.###.', '#...#', '#...#', '.###.']],
  '9': [['.###.', '#...#', '#...#', '.####', '....#', '...#.', '.##..'], ['.###.', '#...#', '#...#', '.####', '....#', '....#', '.###.']],
  '-': [['.....', '.....', '.....', '#####', '.....', '.....', '.....'], ['.....', '.....', '.....', '.###.', '.....', '.....', '.....']],
  '.': [['.....', '.....', '.....', '.....', '.....', '.##..', '.##..'], ['.....', '.....', '.....', '.....', '.....', '.....', '..#..']],
}

export interface DotLook {
  /** Width of a dot as a share of the dot pitch; 1 leaves no grid between dots. */
  fill: number
  isRound: boolean
  /** Dot columns between figures. */
  spacing: number
  /** Width of a dot column against the height of a dot row. */
  aspect: number
  form: number
  /** The point takes two columns instead of five. */
  narrowPoint: boolean
}

export const dotLook = (random: Random): DotLook => ({
  fill: random.between(0.62, 1),
  isRound: random.chance(0.4),
  spacing: random.between(0.9, 1.8),
  aspect: random.between(0.8, 1.05),
  form: random.whole(0, 1),
  narrowPoint: random.chance(0.5),
})

export const drawDots = (context: SKRSContext2D, text: string, height: number, look: DotLook, ink: { lit: string; ghost: string | null }): { left: number; right: number } => {
  const pitchY = height / 7
  const pitchX = pitchY * look.aspect
  let x = 0
  let left = Infinity
  let right = 0
  for (const figure of text) {
    const forms = glyphs[figure]
    if (!forms) throw new Error(`no dot figure "${figure}"`)
    const rows = forms[look.form % forms.length]!
    const isNarrow = figure === '.' && look.narrowPoint
    const [firstColumn, columns] = isNarrow ? [1, 2] : [0, 5]
    for (let row = 0; row < 7; row++) {
      for (let column = 0; column < columns; column++) {
        const isLit = rows[row]![firstColumn + column] === '#'
        if (!isLit && !ink.ghost) continue
        const [dotX, dotY] = [x + (column + 0.5) * pitchX, (row + 0.5) * pitchY]
        context.fillStyle = isLit ? ink.lit : (ink.ghost as string)
        context.beginPath()
        if (look.isRound) context.ellipse(dotX, dotY, (pitchX * look.fill) / 2, (pitchY * look.fill) / 2, 0, 0, 7)
        else context.rect(dotX - (pitchX * look.fill) / 2, dotY - (pitchY * look.fill) / 2, pitchX * look.fill, pitchY * look.fill)
        context.fill()
        if (!isLit) continue
        left = Math.min(left, dotX - pitchX / 2)
        right = Math.max(right, dotX + pitchX / 2)
      }
    }
    x += (columns + look.spacing) * pitchX
  }
  return { left, right }
}
