import { execFileSync, spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { mkdirSync, mkdtempSync, readFileSync, writeFileSync, copyFileSync, existsSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { openTerminalReader } from '../../src/terminal/reader-engine.ts'
import { evaluate, scores, seeds } from './evaluate.ts'
import { dotFonts, printFonts, segmentFonts } from './fonts.ts'
import { letterMark } from './lines.ts'

/**
 * `npm run train:reader`: draws the scenes, cuts the lines, trains the network with Debian's tesseract-ocr 5.3, scores it and puts it with its card
 * into src/reader/model. One core, about an hour; the same seeds and the same program versions give the same lines, and a
 * model within a point of the shipped one. `npm run train:reader -- <folder>` keeps what was made and goes on from there.
 */
const recipe = {
  scenes: 6000,
  linesEach: 3,
  scenesInDocument: 500,
  network: '[1,48,0,1 Ct3,3,16 Mp3,3 Lfys64 Lbx128 O1c16]',
  /** First quickly, then finely. */
  stages: [
    { learningRate: 1e-3, untilIteration: 110_000 },
    { learningRate: 3e-4, untilIteration: 140_000 },
    { learningRate: 1e-4, untilIteration: 160_000 },
  ],
  validationScenes: 700,
  evaluationScenes: 840,
} as const

const modelFolder = new URL('../../src/reader/model/', import.meta.url).pathname

const main = async (kept: string | undefined): Promise<void> => {
  const folder = kept ?? mkdtempSync(join(tmpdir(), 'reader-'))
  mkdirSync(folder, { recursive: true })
  console.log(`working in ${folder}`)
  const documents = writeDocuments(folder)
  const start = languageModel(folder)
  const model = network(folder, start, documents)
  mkdirSync(modelFolder, { recursive: true })
  copyFileSync(model, join(modelFolder, 'figures.traineddata'))
  await writeCard(model)
}

const writeDocuments = (folder: string): string[] => {
  const script = new URL('write-lines.ts', import.meta.url).pathname
  const documents: string[] = []
  for (let from: number = seeds.training; from < seeds.training + recipe.scenes; from += recipe.scenesInDocument) {
    const file = join(folder, `lines-${String(from).padStart(6, '0')}.lstmf`)
    if (!existsSync(file)) run(process.execPath, ['--import', 'tsx', script, file, String(from), String(from + recipe.scenesInDocument), String(recipe.linesEach)])
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

const network = (folder: string, start: string, documents: readonly string[]): string => {
  const list = join(folder, 'documents.txt')
  writeFileSync(list, documents.map((file) => `${file}\n`).join(''))
  const output = join(folder, 'figures')
  const checkpoint = `${output}_checkpoint`
  recipe.stages.forEach((stage, index) => {
    const done = join(folder, `stage-${index}.done`)
    if (existsSync(done)) return
    const isFirst = index === 0 && !existsSync(checkpoint)
    // prettier-ignore
    run('lstmtraining', [
      '--traineddata', start, '--model_output', output, '--train_listfile', list, '--max_image_MB', '2000',
      '--net_mode', '192', '--learning_rate', String(stage.learningRate), '--max_iterations', String(stage.untilIteration),
      ...(isFirst ? ['--net_spec', recipe.network] : ['--continue_from', checkpoint]),
      ...(index > 0 ? ['--reset_learning_rate'] : []),
    ])
    writeFileSync(done, '')
  })
  const model = join(folder, 'figures.traineddata')
  // Kept in floating point: the integer form is a seventh of the size and a fifth worse.
  run('lstmtraining', ['--stop_training', '--traineddata', start, '--continue_from', checkpoint, '--model_output', model])
  return model
}

/** Hash, seeds, scores, fonts: all that someone needs to judge the model or make it again. */
const writeCard = async (model: string): Promise<void> => {
  const recognise = await openTerminalReader(model)
  const clock = (): number => performance.now()
  const validation = scores(await evaluate(recognise, seeds.validation, recipe.validationScenes, clock))
  const evaluation = scores(await evaluate(recognise, seeds.evaluation, recipe.evaluationScenes, clock))
  console.table(evaluation)
  const bytes = readFileSync(model)
  const card = {
    model: 'figures.traineddata',
    reads: 'figures, point and minus of meter displays in a guide box; any other glyph comes out as x',
    sha256: createHash('sha256').update(bytes).digest('hex'),
    bytes: bytes.length,
    licence: 'MIT, as the rest of this project; nothing was taken over from another model',
    trainer: execFileSync('tesseract', ['--version'], { encoding: 'utf8' }).split('\n')[0],
    network: recipe.network,
    stages: recipe.stages,
    seeds: { ...seeds, trainingScenes: recipe.scenes, linesEach: recipe.linesEach },
    scores: { validation, evaluation },
    pictures: 'Drawn only. No photograph with a licence that allows it was at hand, so none was trained on and none scored: how it does on real instruments is not known.',
    fonts: [...segmentFonts, ...dotFonts, ...printFonts].map(({ family, file, trained }) => ({ family, file, licence: 'SIL OFL 1.1', trained })),
    drawnByHand: 'seven-segment figures of varied cut (segments.ts) and 5 × 7 dot figures (dots.ts), part of this project',
  }
  writeFileSync(join(modelFolder, 'figures.json'), `${JSON.stringify(card, null, 2)}\n`)
}

const run = (program: string, args: readonly string[]): void => {
  const { status, error } = spawnSync(program, args, { stdio: 'inherit', env: { ...process.env, OMP_THREAD_LIMIT: '1' } })
  if (error) throw new Error(`${program} did not start; training needs Debian's tesseract-ocr`, { cause: error })
  if (status !== 0) throw new Error(`${program} ended with ${status}`)
}

await main(process.argv[2])
