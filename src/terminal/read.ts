import { createReadStream } from 'node:fs'
import { createInterface } from 'node:readline'
import { pathToFileURL } from 'node:url'
import { z } from 'zod'
import type { Pixels, Box } from '../reader/picture.ts'
import { readMeter, type MeterReading } from '../reader/reader.ts'
import type { Recognise } from '../reader/recognised.ts'
import { openPicture, type PictureFault } from './picture-file.ts'
import { openTerminalReader } from './reader-engine.ts'

const usage = `Reads meters from picture files, by the same code as the phone.

  npm run --silent read -- batch <file.jsonl | ->

Each line in:  {"file": "meter.jpg", "box": [x, y, width, height]}     the box is optional
Each line out: {"file": "meter.jpg", "text": "7.42" | null, "certain": true, "ms": 41}
A refused picture also says why: {…, "refusal": "blurred"}
`

const lineSchema = z.strictObject({
  file: z.string().min(1),
  box: z.tuple([z.number(), z.number(), z.number().positive(), z.number().positive()]).optional(),
})

/** One line out. */
export interface ReadLine {
  file: string | null
  text: string | null
  certain: boolean
  ms: number
  refusal?: NonNullable<MeterReading['refusal']> | PictureFault | 'badLine'
}

/** Answers one line of the batch; never throws for what the line or its picture is. */
export const readLine = async (line: string, recognise: Recognise, clock: () => number): Promise<ReadLine> => {
  const began = clock()
  const asked = parsed(line)
  const answer = (file: string | null, part: Pick<ReadLine, 'text' | 'certain'> & { refusal?: ReadLine['refusal'] }): ReadLine => {
    const { refusal, ...rest } = part
    return { file, ...rest, ms: Math.round(clock() - began), ...(refusal ? { refusal } : {}) }
  }
  if (!asked) return answer(null, { text: null, certain: false, refusal: 'badLine' })
  const [x, y, width, height] = asked.box ?? []
  const box: Box | null = asked.box ? { x: x!, y: y!, width: width!, height: height! } : null
  const opened: { pixels: Pixels; box: Box } | { fault: PictureFault } = await openPicture(asked.file, box)
  if ('fault' in opened) return answer(asked.file, { text: null, certain: false, refusal: opened.fault })
  const { text, certain, refusal } = await readMeter(opened.pixels, opened.box, null, recognise)
  return answer(asked.file, { text, certain, refusal })
}

const parsed = (line: string): z.infer<typeof lineSchema> | null => {
  try {
    return lineSchema.parse(JSON.parse(line))
  } catch {
    return null
  }
}

const main = async ([command, source, ...rest]: string[]): Promise<number> => {
  if (command !== 'batch' || !source || rest.length > 0) {
    process.stderr.write(usage)
    return 2
  }
  const recognise = await openTerminalReader()
  let bad = 0
  for await (const line of createInterface({ input: source === '-' ? process.stdin : createReadStream(source), crlfDelay: Infinity })) {
    if (line.trim() === '') continue
    const answer = await readLine(line, recognise, () => performance.now())
    if (answer.refusal === 'badLine') bad++
    process.stdout.write(`${JSON.stringify(answer)}\n`)
  }
  return bad > 0 ? 1 : 0
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) process.exitCode = await main(process.argv.slice(2))
