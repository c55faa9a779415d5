import { writeFileSync } from 'node:fs'
import { linesOf } from './lines.ts'
import { trainingDocument, type TrainingLine } from './lstmf.ts'
import { seededRandom } from './random.ts'

/** Writes the training document of the scenes `from` up to, but not including, `to`. Run as a command, so that several can run at once. */
export const writeLines = async (file: string, from: number, to: number, linesEach: number): Promise<void> => {
  const lines: TrainingLine[] = []
  for (let seed = from; seed < to; seed++) lines.push(...(await linesOf(seed, linesEach)))
  // Lines of one scene must not follow each other: the trainer takes a document in its order.
  const random = seededRandom(from)
  for (let i = lines.length - 1; i > 0; i--) {
    const j = random.whole(0, i)
    ;[lines[i], lines[j]] = [lines[j]!, lines[i]!]
  }
  writeFileSync(file, trainingDocument(lines))
}

const [file, from, to, linesEach] = process.argv.slice(2)
if (file && from && to && linesEach && process.argv[1]?.endsWith('write-lines.ts')) await writeLines(file, Number(from), Number(to), Number(linesEach))
