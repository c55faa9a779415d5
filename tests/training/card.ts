import { execFileSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { openTerminalReader } from '../../src/terminal/reader-engine.ts'
import { evaluate, scores, seeds, type Score } from './evaluate.ts'
import { dotFonts, printFonts, segmentFonts } from './fonts.ts'
import { recipe, type Recipe } from './recipe.ts'

const modelName = 'figures.traineddata'
export const modelFolder = new URL('../../src/reader/model/', import.meta.url).pathname

/** Pictures of each set that a model is scored on. */
type Scoring = Record<'validation' | 'evaluation', number>
export const shippedScoring: Scoring = { validation: 140, evaluation: 420 }

/** Scores the model in a folder and writes its card beside it. */
export const scoreAndWriteCard = async (folder: string, how: Recipe, scored: Scoring): Promise<void> => {
  const recognise = await openTerminalReader(join(folder, modelName))
  const scoreOn = async (set: keyof Scoring): Promise<Scores> => scores(await evaluate(recognise, seeds[set], scored[set], () => performance.now()))
  const found = { validation: await scoreOn('validation'), evaluation: await scoreOn('evaluation') }
  console.table(found.evaluation)
  writeCard(folder, how, found)
}

type Scores = ReturnType<typeof scores>

/** As JSON and to be read: all that someone needs to judge the model or make it again. */
const writeCard = (folder: string, how: Recipe, found: Record<keyof Scoring, Scores>): void => {
  const bytes = readFileSync(join(folder, modelName))
  const card = {
    model: modelName,
    reads: 'figures, point and minus of meter displays in a guide box; any other glyph comes out as x',
    sha256: createHash('sha256').update(bytes).digest('hex'),
    bytes: bytes.length,
    licence: 'MIT, as the rest of this project; nothing was taken over from another model',
    trainer: execFileSync('tesseract', ['--version'], { encoding: 'utf8' }).split('\n')[0],
    network: how.network,
    stages: how.stages,
    seeds: { ...seeds, trainingScenes: how.scenes, linesEach: how.linesEach },
    scores: found,
    pictures: 'Drawn only. No photograph with a licence that allows it is part of this project, so none was trained on and none is scored: how it does on real instruments is not known.',
    again: 'The whole of the command, from the drawing of the scenes to these scores, takes 46 minutes on one processor. The model before this one, trained on scenes and cuts that were still changing, scored 409 exact and 370 certain of the same 420.',
    fonts: [...segmentFonts, ...dotFonts, ...printFonts].map(({ family, file, trained }) => ({ family, file, licence: 'SIL OFL 1.1', trained })),
    drawnByHand: 'seven-segment figures of varied cut (segments.ts) and 5 × 7 dot figures (dots.ts), part of this project',
  }
  writeFileSync(join(folder, 'figures.json'), `${JSON.stringify(card, null, 2)}\n`)
  writeFileSync(join(folder, 'README.md'), readme(card))
}

const readme = (card: {
  sha256: string
  bytes: number
  licence: string
  trainer: string | undefined
  seeds: { trainingScenes: number; linesEach: number }
  scores: { evaluation: Record<string, Score> }
  pictures: string
  again: string
  fonts: readonly { family: string; trained: boolean }[]
}): string => {
  const percent = (count: number, of: number): string => `${((100 * count) / of).toFixed(1)} %`
  const rows = Object.entries(card.scores.evaluation).map(
    ([style, { pictures, exact, certain, certainWrong }]) => `| ${style} | ${pictures} | ${percent(exact, pictures)} | ${percent(certain, pictures)} | ${certainWrong} |`,
  )
  const families = (trained: boolean): string => card.fonts.filter((font) => font.trained === trained).map(({ family }) => family).join(', ')
  return `# The meter model

\`figures.traineddata\` reads the figures, point and minus of a meter's display from one line; any other glyph comes out as x. Written by \`npm run train:reader\`, with all details, into \`figures.json\`.

- SHA-256 \`${card.sha256}\`, ${card.bytes} bytes
- ${card.licence}
- Trained with ${card.trainer} on drawn scenes alone: seeds ${seeds.training} to ${seeds.training + card.seeds.trainingScenes - 1}, ${card.seeds.linesEach} lines each; choices made on ${seeds.validation} onwards; scored on ${seeds.evaluation} onwards, which nothing was chosen by
- ${card.pictures}
- ${card.again}

Scores of the whole reader, box 25 % too large on each side:

| style | pictures | exact | called certain | of these wrong |
| --- | ---: | ---: | ---: | ---: |
${rows.join('\n')}

Fonts of the scenes, all under the SIL Open Font License 1.1: ${families(true)}; kept from training, for scoring: ${families(false)}. Seven-segment and 5 × 7 dot figures are also drawn by this project itself.
`
}

// By itself: scores the model that ships anew.
if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) await scoreAndWriteCard(modelFolder, recipe, shippedScoring)
