import { execFile, spawn } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { promisify } from 'node:util'
import { afterAll, describe, expect, it } from 'vitest'
import { catalogue } from '../../src/science/catalogue.ts'
import { answerLine } from '../../src/terminal/calc/batch.ts'

const root = new URL('../..', import.meta.url).pathname
const tsx = join(root, 'node_modules/.bin/tsx')
const program = join(root, 'src/terminal/calc.ts')

interface Ended {
  code: number | null
  out: string
  err: string
}

const calc = (parts: readonly string[], input = ''): Promise<Ended> =>
  new Promise((resolve, reject) => {
    const child = spawn(tsx, [program, ...parts], { cwd: root })
    let out = ''
    let err = ''
    child.stdout.setEncoding('utf8').on('data', (text: string) => (out += text))
    child.stderr.setEncoding('utf8').on('data', (text: string) => (err += text))
    child.on('error', reject)
    child.on('close', (code) => resolve({ code, out, err }))
    child.stdin.end(input)
  })

const folder = mkdtempSync(join(tmpdir(), 'calc-'))
afterAll(() => rmSync(folder, { recursive: true }))

const lines = (text: string): unknown[] =>
  text
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line) as unknown)

describe('calc', { timeout: 30_000 }, () => {
  it('lists every calculation with its title', async () => {
    const { code, out } = await calc(['list'])
    expect(code).toBe(0)
    expect(out.trimEnd().split('\n')).toHaveLength(catalogue.length)
    expect(out).toMatch(/^acidBase\.dose +Reagent that brings a bath to its pH$/m)
  })

  it('describes a calculation as JSON Schema with units, source and example', async () => {
    const { code, out } = await calc(['describe', 'acidBase.dose'])
    expect(code).toBe(0)
    const described = JSON.parse(out) as { inputs: { properties: Record<string, unknown>; required: string[] }; outputs: { properties: Record<string, unknown> } }
    expect(described).toMatchObject({ id: 'acidBase.dose', source: expect.any(String), domain: expect.any(String), example: { inputs: expect.any(Object) } })
    expect(described.inputs.properties['celsius']).toMatchObject({ type: 'number', minimum: 0, maximum: 60, unit: '°C' })
    expect(described.inputs.properties['reagent']).toMatchObject({ allOf: [{ oneOf: [{ required: ['molPerLitre'] }, { required: ['percentByMass'] }, { required: ['form'] }] }] })
    expect(described.inputs.required).not.toContain('responseFactor')
    expect(described.outputs.properties).toHaveProperty('firstPortion')
  })

  it('prints one JSON result and nothing else', async () => {
    const { code, out, err } = await calc(['run', 'water.density', '{"celsius": 20}'])
    expect({ code, err }).toEqual({ code: 0, err: '' })
    expect(JSON.parse(out)).toEqual({ gramsPerMillilitre: expect.closeTo(0.998204, 6) })
  })

  it('shows the working, line by line, with the source', async () => {
    const { code, out } = await calc(['working', 'phMeter.buffer', '{"buffer": "borax", "celsius": 22}'])
    expect(code).toBe(0)
    expect(out).toContain('table value at 20 °C   9.225 pH')
    expect(out).toMatch(/^Source: NIST/m)
  })

  it.each([
    ['inputs that are not JSON', ['run', 'water.density', '{celsius: 20}'], /^the inputs are not JSON/],
    ['no inputs', ['run', 'water.density'], /takes the inputs as JSON/],
    ['an id that is not there, with near ones', ['run', 'water.densty', '{}'], /^there is no calculation "water\.densty"; perhaps water\.density/],
    ['an id with a capital', ['describe', 'acidbase.ph'], /perhaps acidBase\.pH/],
    ['a value out of range', ['run', 'water.density', '{"celsius": 101}'], /^celsius 101 is refused: it takes a number, 0 to 100 °C$/],
    ['an infinity', ['run', 'water.density', '{"celsius": 1e999}'], /^celsius Infinity is refused/],
    ['a field spelled wrong', ['run', 'water.density', '{"celcius": 20}'], /^celcius is not a field here; there are fields: celsius$/],
    ['inputs of another shape', ['run', 'water.density', '[1]'], /^the inputs \[1\] are refused/],
    ['two strengths for one substance', ['run', 'acidBase.pH', '{"celsius":25,"bath":[{"substance":"borax","gramsPerLitre":1,"molPerLitre":1}]}'], /^bath\[0\] takes exactly one of .*; given: gramsPerLitre, molPerLitre$/],
    ['an aim that the reagent cannot reach', ['run', 'acidBase.dose', JSON.stringify({ celsius: 25, litres: 1, bath: [], measuredPh: 7, aimPh: 8, reagent: { substance: 'aceticAcid', molPerLitre: 1 } })], /^aimPh 8 has no answer: it takes pH .* to 7,/],
    ['a file that is not there', ['batch', join(tmpdir(), 'no-such-file.jsonl')], /cannot be read/],
    ['a folder in place of a file', ['batch', tmpdir()], /cannot be read/],
    ['no command', [], /^a command is missing/],
    ['an unknown command', ['calculate'], /^there is no command "calculate"/],
  ])('answers %s with one clear line and exit code 2', async (_, parts, line) => {
    const { code, out, err } = await calc(parts)
    expect({ code, out }).toEqual({ code: 2, out: '' })
    expect(err.trimEnd()).toMatch(line)
    expect(err.trimEnd().split('\n')).toHaveLength(1)
  })

  const cases = [
    '{"id":"water.density","inputs":{"celsius":20}}',
    'not JSON',
    '',
    '{"id":"water.density","inputs":{"celsius":200}}',
    '{"id":"no.such","inputs":{}}',
    '{"id":"water.density"}',
    '[]',
    '{"id":"mix.molarMass","inputs":{"substance":"boricAcid"}}',
  ]
  const answers = [
    { ok: true, result: { gramsPerMillilitre: expect.closeTo(0.998204, 6) } },
    { ok: false, error: expect.stringContaining('not JSON'), field: '' },
    { ok: false, error: expect.stringContaining('0 to 100 °C'), field: 'celsius' },
    { ok: false, error: expect.stringContaining('no.such'), field: 'id' },
    { ok: false, error: expect.stringContaining('inputs are missing'), field: '' },
    { ok: false, error: expect.any(String), field: '' },
    { ok: true, result: { gramsPerMole: expect.closeTo(61.83, 2) } },
  ]

  it('answers a file of cases a line each, in order, bad lines among them', async () => {
    const file = join(folder, 'cases.jsonl')
    writeFileSync(file, cases.join('\r\n'))
    const { code, out } = await calc(['batch', file])
    expect(code).toBe(0)
    expect(lines(out)).toEqual(answers)
  })

  it('answers what is piped in', async () => {
    const { code, out } = await calc(['batch', '-'], `${cases.join('\n')}\n`)
    expect(code).toBe(0)
    expect(lines(out)).toEqual(answers)
  })

  it('answers 10,000 mixed cases in one process within seconds', async () => {
    const mixed = Array.from({ length: 10_000 }, (_, index) => {
      const { id, example } = catalogue[index % catalogue.length]!
      return JSON.stringify({ id, inputs: example.inputs })
    })
    const started = performance.now()
    const { code, out } = await calc(['batch', '-'], mixed.join('\n'))
    const seconds = (performance.now() - started) / 1000
    expect(code).toBe(0)
    const answered = lines(out) as { ok: boolean }[]
    expect(answered).toHaveLength(10_000)
    expect(answered.every(({ ok }) => ok)).toBe(true)
    // Two seconds on an idle machine of two cores; the rest is room for a busy one.
    expect(seconds).toBeLessThan(15)
  })

  it('ends quietly when its reader has read enough', async () => {
    const file = join(folder, 'many.jsonl')
    writeFileSync(file, `${'{"id":"water.density","inputs":{"celsius":20}}\n'.repeat(50_000)}`)
    const { stdout, stderr } = await promisify(execFile)('sh', ['-c', `"${tsx}" "${program}" batch "${file}" | head -1`], { cwd: root })
    expect(stdout.trimEnd().split('\n')).toHaveLength(1)
    expect(stderr).toBe('')
  })
})

describe('a case of a batch', () => {
  it('that names a field of Object’s is an unknown calculation, not a fault', () => {
    expect(answerLine('{"id":"constructor","inputs":{}}')).toMatchObject({ ok: false, field: 'id' })
    expect(answerLine('{"id":"water.density","inputs":{"celsius":20,"__proto__":{"a":1}}}')).toMatchObject({ ok: false, field: '__proto__' })
  })
})
