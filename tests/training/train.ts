import { spawnSync } from 'node:child_process'
import { copyFileSync, existsSync, mkdirSync, mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { modelFolder, scoreAndWriteCard, shippedScoring } from './card.ts'
import { letterMark } from '../../src/reader/vote.ts'
import { seeds } from './evaluate.ts'
import { recipe, trial, type Recipe } from './recipe.ts'

/**
 * `npm run train:reader`: draws the scenes, cuts the lines, trains the network with Debian's tesseract-ocr 5.3, scores it and puts it with its card
 * into src/reader/model. One core, about an hour; the same seeds and the same program versions give the same lines, and a
 * model within a point of the shipped one. `npm run train:reader -- <folder>` keeps what was made and goes on from there;
 * `-- --trial` takes every step on next to nothing, and leaves the model that ships alone.
 */
const main = async (kept: string | undefined, isTrial: boolean): Promise<void> => {
  const how = isTrial ? trial : recipe
  const folder = kept ?? mkdtempSync(join(tmpdir(), 'reader-'))
  mkdirSync(folder, { recursive: true })
  console.log(`working in ${folder}`)
  const model = network(folder, how, languageModel(folder), writeDocuments(folder, how))
  const into = isTrial ? join(folder, 'model') : modelFolder
  mkdirSync(into, { recursive: true })
  copyFileSync(model, join(into, 'figures.traineddata'))
  await scoreAndWriteCard(into, how, isTrial ? { validation: 7, evaluation: 7 } : shippedScoring)
  if (isTrial) console.log(`every step works here; what came of it lies in ${into}`)
}

const writeDocuments = (folder: string, how: Recipe): string[] => {
  const script = new URL('write-lines.ts', import.meta.url).pathname
  const documents: string[] = []
  for (let from: number = seeds.training; from < seeds.training + how.scenes; from += how.scenesInDocument) {
    const file = join(folder, `lines-${String(from).padStart(6, '0')}.lstmf`)
    if (!existsSync(file)) run(process.execPath, ['--import', 'tsx', script, file, String(from), String(from + how.scenesInDocument), String(how.linesEach)])
    documents.push(file)
  }
  return documents
}

/** Only the alphabet: figures, point, minus, and the mark for any other glyph. No words, since meters show none. */
const languageModel = (folder: string): string => {
  const glyphs = [...'0123456789.-', letterMark]
  writeFileSync(join(folder, 'glyphs.box'), glyphs.map((glyph, i) => `${glyph} ${i * 10} 0 ${i * 10 + 10} 48 0\n`).join(''))
  run('unicharset_extractor', ['--output_unicharset', join(folder, 'glyphs.unicharset'), '--norm_mode', '1', join(folder, 'glyphs.box')])
  const scripts = join(folder, 'scripts')
  mkdirSync(scripts, { recursive: true })
  // The program insists on this table for Han characters; one line of it will do.
  writeFileSync(join(scripts, 'radical-stroke.txt'), '4E00\t1.0\n')
  run('combine_lang_model', ['--input_unicharset', join(folder, 'glyphs.unicharset'), '--script_dir', scripts, '--lang', 'figures', '--output_dir', folder, '--pass_through_recoder'])
  return join(folder, 'figures', 'figures.traineddata')
}

const network = (folder: string, how: Recipe, start: string, documents: readonly string[]): string => {
  const list = join(folder, 'documents.txt')
  writeFileSync(list, documents.map((file) => `${file}\n`).join(''))
  const output = join(folder, 'figures')
  const checkpoint = `${output}_checkpoint`
  how.stages.forEach((stage, index) => {
    const done = join(folder, `stage-${index}.done`)
    if (existsSync(done)) return
    const isFirst = index === 0 && !existsSync(checkpoint)
    // prettier-ignore
    run('lstmtraining', [
      '--traineddata', start, '--model_output', output, '--train_listfile', list, '--max_image_MB', '2000',
      '--net_mode', '192', '--learning_rate', String(stage.learningRate), '--max_iterations', String(stage.untilIteration),
      ...(isFirst ? ['--net_spec', how.network] : ['--continue_from', checkpoint]),
      ...(index > 0 ? ['--reset_learning_rate'] : []),
    ])
    writeFileSync(done, '')
  })
  const model = join(folder, 'figures.traineddata')
  // Kept in floating point: the integer form is a seventh of the size and a fifth worse.
  run('lstmtraining', ['--stop_training', '--traineddata', start, '--continue_from', checkpoint, '--model_output', model])
  return model
}

const run = (program: string, args: readonly string[]): void => {
  const { status, error } = spawnSync(program, args, { stdio: 'inherit', env: { ...process.env, OMP_THREAD_LIMIT: '1' } })
  if (error) throw new Error(`${program} did not start; training needs Debian's tesseract-ocr`, { cause: error })
  if (status !== 0) throw new Error(`${program} ended with ${status}`)
}

const args = process.argv.slice(2)
await main(
  args.find((arg) => !arg.startsWith('--')),
  args.includes('--trial'),
)
