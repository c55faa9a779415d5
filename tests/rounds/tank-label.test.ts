import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { demoLab } from '../../src/demo/lab.ts'
import { parseTankLabel, tankLabelPath } from '../../src/rounds/tank-label.ts'
import type { CheckId, StationId } from '../../src/plan/ids.ts'

const origin = 'https://bath.lab.example'
const codeOf = (text: string): string => {
  const read = parseTankLabel(text, origin)
  return read.ok ? 'ok' : read.code
}

describe('the label at a tank', () => {
  it('opens its station or its check', () => {
    expect(parseTankLabel(`${origin}/at/1/station/neg-1-fix`, origin)).toEqual({ ok: true, label: { station: 'neg-1-fix' } })
    expect(parseTankLabel(`${origin}/at/1/check/neg-1-fix-ph`, origin)).toEqual({ ok: true, label: { check: 'neg-1-fix-ph' } })
    expect(parseTankLabel('/at/1/station/neg-1-fix', origin)).toMatchObject({ ok: true })
  })

  it('is read back for every place and check of a plan, and needs no escaping in an address', () => {
    const { machines, checks } = demoLab()
    const labels = [...machines.flatMap(({ stations }) => stations.map(({ id }) => ({ station: id }))), ...checks.map(({ id }) => ({ check: id }))]
    for (const label of labels) {
      const path = tankLabelPath(label)
      expect(encodeURI(path)).toBe(path)
      expect(new URL(path, origin).pathname).toBe(path)
      expect(parseTankLabel(origin + path, origin)).toEqual({ ok: true, label })
    }
  })

  it.each([
    ['an address of somewhere else', 'https://example.org/', 'notALabel'],
    ['another laboratory’s label', 'https://other.example/at/1/station/neg-1-fix', 'otherLaboratory'],
    ['a label of a later version', `${origin}/at/2/station/neg-1-fix`, 'laterVersion'],
    ['something behind it', `${origin}/at/1/station/neg-1-fix/more`, 'notALabel'],
    ['a query', `${origin}/at/1/station/neg-1-fix?x=1`, 'notALabel'],
    ['capital letters', `${origin}/at/1/station/NEG-1`, 'notALabel'],
    ['no id', `${origin}/at/1/station/`, 'notALabel'],
    ['another word', `${origin}/at/1/person/marta`, 'notALabel'],
    ['an id that begins with a hyphen', `${origin}/at/1/station/-x`, 'notALabel'],
    ['a plain text', 'Fixing bath 1', 'notALabel'],
    ['nothing', '', 'notALabel'],
  ])('%s is refused', (_, text, code) => expect(codeOf(text)).toBe(code))

  it('whatever a camera gives, it is a good label or a named refusal', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.webUrl(), fc.string().map((id) => `${origin}/at/1/station/${id}`)), (text) => {
        const read = parseTankLabel(text, origin)
        if (read.ok) expect(tankLabelPath(read.label)).toBe(text.trim().replace(origin, ''))
      }),
      { numRuns: 60 },
    )
    expect(tankLabelPath({ station: 'a' as StationId })).not.toBe(tankLabelPath({ check: 'a' as CheckId }))
  })
})
