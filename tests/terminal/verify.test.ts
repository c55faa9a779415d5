import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { canonical } from '../../src/record/canonical.ts'
import { newPrivateKey, serverKey } from '../../src/server/keys.ts'
import { verifyText } from '../../src/terminal/verify.ts'
import { canonicalText } from '../../src/terminal/verify/canonical.ts'
import { recordFileText, type RecordFile } from '../../src/wire/record-file.ts'
import { shiftFileText, type ShiftFile } from '../../src/wire/shift-file.ts'
import { signedShift } from './signed-shift.ts'

const checked = (file: ShiftFile, server?: string): { status: number; last: string } => {
  const { status, says } = verifyText(shiftFileText(file), server)
  return { status, last: says.findLast((line) => !line.startsWith('and '))! }
}
/** The file with one thing in it changed, as somebody with an editor would. */
const changed = (file: ShiftFile, change: (copy: ShiftFile) => void): ShiftFile => {
  const copy = structuredClone(file)
  change(copy)
  return copy
}
const entryOf = (file: ShiftFile, kind: string) => file.entries.find(({ entry }) => entry['kind'] === kind)!
const lineIn = (file: ShiftFile, id: string): number => shiftFileText(file).split('\n').findIndex((line) => line.startsWith('{"entry":') && line.includes(`"id":"${id}"`)) + 1

describe('a signed shift, from its file alone', () => {
  const file = signedShift()

  it('holds: every hash, signature, chain and digest, and the word of the server', () => {
    const { status, says } = verifyText(shiftFileText(file))
    expect(says.at(-1)).toBe('Everything holds.')
    expect(status).toBe(0)
    expect(says.join('\n')).toContain('Signed by helena, 2026-01-12T14:20:00.000Z: 9 entries')
  })

  it('tells what came later, and whether it was countersigned', () => {
    const late = verifyText(shiftFileText(signedShift({ late: true })))
    expect(late).toMatchObject({ status: 0 })
    expect(late.says.join('\n')).toContain('9 entries, 1 came later (1 not countersigned)')
    const seen = verifyText(shiftFileText(signedShift({ late: true, countersigned: true })))
    expect(seen).toMatchObject({ status: 0 })
    expect(seen.says.join('\n')).toContain('1 came later (0 not countersigned)')
  })

  it('says that a signature without the server is provisional', () => {
    const { status, says } = verifyText(shiftFileText(signedShift({ provisional: true })))
    expect(status).toBe(0)
    expect(says.join('\n')).toContain('provisional: without the server’s word')
  })

  it('tells of the signer’s own exceptions until another has countersigned', () => {
    expect(verifyText(shiftFileText(signedShift({ own: true }))).says.join('\n')).toContain('releases 1 of the signer’s own exceptions (1 not countersigned by another)')
  })

  it('is not held to be signed where nobody signed', () => {
    const unsigned = changed(file, (copy) => void (copy.entries = copy.entries.filter(({ entry }) => entry['kind'] !== 'signOff')))
    expect(checked(unsigned)).toEqual({ status: 1, last: 'Nobody has signed this shift.' })
  })

  it('holds only under the server key that the laboratory knows', () => {
    const { says } = verifyText(shiftFileText(file))
    const thumbprint = says.find((line) => line.startsWith('Server key'))!.split(' ').at(-1)!
    expect(checked(file, thumbprint.slice(0, 16)).status).toBe(0)
    expect(checked(file, '0123456789abcdef')).toMatchObject({ status: 1, last: expect.stringContaining('server key') as string })
  })
})

describe('a file that somebody has worked on', () => {
  const file = signedShift({ late: true, countersigned: true })

  it('names the line of a reading that was made better', () => {
    const bad = changed(file, (copy) => void ((entryOf(copy, 'reading').entry['data'] as { value: number }).value = 4.5))
    const { id } = entryOf(file, 'reading').entry
    expect(checked(bad)).toEqual({ status: 1, last: `Line ${lineIn(bad, id)}: entry ${id} is not what was hashed: its content was changed` })
  })

  it('is found out by the digest where an entry was left out, and by its gap', () => {
    const { id } = entryOf(file, 'note').entry
    const { status, says } = verifyText(shiftFileText(changed(file, (copy) => void (copy.entries = copy.entries.filter(({ entry }) => entry.id !== id)))))
    expect(status).toBe(1)
    expect(says.join('\n')).toContain('digest that is not that of the entries it covers')
  })

  it('cannot declare an entry uncounted', () => {
    const bad = changed(file, (copy) => void (entryOf(copy, 'note').uncounted = 'invalid'))
    expect(checked(bad).last).toContain('digest that is not that of the entries it covers')
  })

  it.each([
    ['a hash made to fit the change', (copy: ShiftFile) => void (entryOf(copy, 'note').h = '0'.repeat(64) as never), 'is not what was hashed'],
    ['another signature', (copy: ShiftFile) => void (entryOf(copy, 'note').sig = entryOf(copy, 'add').sig), 'was not signed by its device'],
    ['another key', (copy: ShiftFile) => void (copy.devices[0]!.key = serverKey(newPrivateKey()).publicKey), 'was not signed by its device'],
    ['a key that is no point', (copy: ShiftFile) => void (copy.devices[0]!.key.x = 'AAAA'), 'was not signed by its device'],
    ['a device left out', (copy: ShiftFile) => void copy.devices.shift(), 'of which the file has no key'],
    ['an entry twice', (copy: ShiftFile) => void copy.entries.push(copy.entries[0]!), 'stands in the file twice'],
    ['another server', (copy: ShiftFile) => void (copy.server.key = serverKey(newPrivateKey()).publicKey), 'the server did not'],
    ['another span', (copy: ShiftFile) => void (copy.shift.to -= 60_000), 'another span'],
  ])('is refused: %s', (_, change, why) => {
    const { status, says } = verifyText(shiftFileText(changed(file, change)))
    expect(status).toBe(1)
    expect(says.join('\n')).toContain(why)
  })

  it('with any one byte of any entry changed, does not hold', () => {
    const text = shiftFileText(file)
    const from = text.indexOf('{"entry":')
    fc.assert(
      fc.property(fc.integer({ min: from, max: text.length - 5 }), fc.constantFrom('0', '7', 'a', 'Z', ' '), (at, put) => {
        fc.pre(text[at] !== put)
        const { status } = verifyText(`${text.slice(0, at)}${put}${text.slice(at + 1)}`)
        // A space beside the brackets changes no content.
        const same = (() => {
          try {
            return JSON.stringify(JSON.parse(`${text.slice(0, at)}${put}${text.slice(at + 1)}`)) === JSON.stringify(JSON.parse(text))
          } catch {
            return false
          }
        })()
        expect(status === 0).toBe(same)
      }),
      { numRuns: 150 },
    )
  })

  it('ends with 2 where it is no such file', () => {
    expect(verifyText('{').status).toBe(2)
    expect(verifyText('{"format":"bathkeeper-plan"}').status).toBe(2)
  })
})

describe('the command', () => {
  it('prints what holds, and ends with 0, 1 or 2', () => {
    const folder = mkdtempSync(join(tmpdir(), 'bathkeeper-verify-'))
    try {
      const run = (...args: string[]) => spawnSync(process.execPath, ['--import', 'tsx', 'src/terminal/verify.ts', ...args], { encoding: 'utf8' })
      const good = join(folder, 'good.json')
      const file = signedShift()
      writeFileSync(good, shiftFileText(file))
      const bad = join(folder, 'bad.json')
      writeFileSync(bad, shiftFileText(file).replace('4.92', '4.52'))
      expect(run(good)).toMatchObject({ status: 0, stdout: expect.stringContaining('Everything holds.') as string })
      expect(run(bad)).toMatchObject({ status: 1, stderr: expect.stringMatching(/Line \d+: entry/) as string })
      expect(run(join(folder, 'missing.json')).status).toBe(2)
      expect(run().status).toBe(2)
    } finally {
      rmSync(folder, { recursive: true, force: true })
    }
  })
})

describe('canonical JSON, written a second time', () => {
  // RFC 8785, section 3.2.2 and 3.2.3: the example before and after.
  it('gives the standard’s own example', () => {
    const given = JSON.parse('{"numbers":[333333333.33333329,1E30,4.50,2e-3,0.000000000000000000000000001],"string":"\\u20ac$\\u000F\\u000aA\'\\u0042\\u0022\\u005c\\\\\\"\\/","literals":[null,true,false]}') as unknown
    expect(canonicalText(given)).toBe('{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\\u000f\\nA\'B\\"\\\\\\\\\\"/"}')
  })

  it('agrees with what phones and server use, for any JSON', () => {
    fc.assert(
      fc.property(fc.json({ maxDepth: 4 }), (text) => {
        const value = JSON.parse(text) as unknown
        let theirs: string
        try {
          theirs = canonical(value)
        } catch {
          return
        }
        expect(canonicalText(value)).toBe(theirs)
      }),
    )
  })
})

describe('the record of any span, from its file alone', () => {
  const record = ({ laboratory, timeZone, server, devices, entries }: ShiftFile): RecordFile => ({ format: 'bathkeeper-record', v: 1, laboratory, timeZone, span: { from: null, to: null }, server: { key: server.key }, devices, entries })
  const file = record(signedShift({ late: true, countersigned: true }))
  const said = (it: RecordFile): ReturnType<typeof verifyText> => verifyText(recordFileText(it))

  it('holds, with every signature whose shift lies in it', () => {
    const { status, says } = said(file)
    expect([status, says.at(-1)]).toEqual([0, 'Everything holds.'])
    expect(says).toEqual(expect.arrayContaining([expect.stringMatching(/^Signed by helena, .*1 came later \(0 not countersigned\)/), 'Countersigned 1 time']) as string[])
  })

  it('of which the span cuts a shift leaves its signature for the whole one', () => {
    const cut = { ...file, span: { from: Date.parse('2026-01-12T10:00:00Z'), to: null } }
    expect(said(cut).says.some((line) => line.startsWith('Signed by'))).toBe(false)
    expect(said(cut).status).toBe(0)
  })

  it('does not hold with an entry taken out, with one changed, or with a signature over other entries', () => {
    const middle = file.entries.findIndex(({ entry }, index) => index > 0 && file.entries[index - 1]!.entry.dev === entry.dev && file.entries[index + 1]?.entry.dev === entry.dev)
    const without = said({ ...file, entries: file.entries.filter((_, index) => index !== middle) })
    expect([without.status, without.says.some((line) => line.includes('1 between them are missing'))]).toEqual([1, true])
    expect(said({ ...file, entries: file.entries.map((one, index) => (index === middle ? { ...one, entry: { ...one.entry, data: {} } } : one)) }).status).toBe(1)
    const own = record(signedShift())
    const digest = { ...own, entries: own.entries.slice(1) }
    expect(said(digest).status).toBe(1)
  })
})
