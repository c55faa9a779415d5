import { describe, expect, it } from 'vitest'
import { certify, mayConnect } from '../../src/corrections/certificate.ts'
import { beginSheet, nextStep, tick, type Formula, type MixingSheet } from '../../src/corrections/mixing-sheet.ts'
import { mixingTime } from '../../src/corrections/mixing-time.ts'
import type { CautionLine } from '../../src/corrections/sealed-dose.ts'
import { demoLab } from '../../src/demo/lab.ts'
import type { StationId } from '../../src/plan/ids.ts'
import type { EntryId } from '../../src/record/ids.ts'

const plan = demoLab()
const [marta, tomas] = plan.people.map(({ id }) => id)
const mixing = 'mixing' as StationId
const start = 1_768_204_800_000

/** Acid hardening fixing bath of the open literature, written in a wrong order on purpose. */
const fixingBath: Formula = {
  name: 'acid hardening fixing bath',
  steps: [
    { substance: 'sodiumThiosulfate', form: 'pentahydrate', gramsPerLitre: 240 },
    { substance: 'potassiumAlum', form: 'dodecahydrate', gramsPerLitre: 15 },
    { substance: 'aceticAcid', millilitresPerLitre: 48 },
    { substance: 'sodiumSulfite', gramsPerLitre: 15 },
    { substance: 'boricAcid', gramsPerLitre: 7.5 },
  ],
}
const developer: Formula = {
  name: 'borax developer',
  steps: [
    { substance: 'metol', gramsPerLitre: 2 },
    { substance: 'sodiumSulfite', gramsPerLitre: 100 },
    { substance: 'hydroquinone', gramsPerLitre: 5 },
    { substance: 'borax', form: 'decahydrate', gramsPerLitre: 2 },
  ],
}

const begun = (formula: Formula, meantFor: string): MixingSheet => {
  const made = beginSheet({ formula, litres: 100, station: mixing, meantFor: meantFor as StationId, startedAt: start })
  if (!made.ok) throw new Error(made.why.code)
  return made.sheet
}

let count = 0
const cautionsFor = (sheet: MixingSheet, now: number): CautionLine[] =>
  (nextStep(sheet)?.needsCaution ?? []).map(({ card, version, lines }) => ({
    id: `00000000-0000-7000-8000-${(++count).toString().padStart(12, '0')}` as EntryId, time: now, person: marta!, data: { card, version, lines: [...lines], station: mixing },
  }))

const ticked = (sheet: MixingSheet, now = start + 60_000): MixingSheet => {
  const done = tick(sheet, nextStep(sheet)!.order, { cautions: cautionsFor(sheet, now), person: marta!, now, celsius: 30 })
  if (!done.ok) throw new Error(done.why.code)
  return done.sheet
}
const all = (sheet: MixingSheet): MixingSheet => (nextStep(sheet) ? all(ticked(sheet)) : sheet)

describe('a mixing sheet', () => {
  it('puts what was written in a wrong order right: thiosulfate, sulfite, acid, alum last', () => {
    const order = begun(fixingBath, 'neg-1-fix').steps.map(({ substance }) => substance)
    expect(order.indexOf('sodiumThiosulfate')).toBeLessThan(order.indexOf('sodiumSulfite'))
    expect(order.indexOf('sodiumSulfite')).toBeLessThan(order.indexOf('aceticAcid'))
    expect(order.at(-1)).toBe('potassiumAlum')
    expect(begun(fixingBath, 'neg-1-fix').moved.length).toBeGreaterThan(0)
  })

  it('says why it must not be mixed so, instead of a sheet', () => {
    const noSulfite: Formula = { name: 'no sulfite', steps: fixingBath.steps.filter(({ substance }) => substance !== 'sodiumSulfite') }
    expect(beginSheet({ formula: noSulfite, litres: 100, station: mixing, meantFor: 'neg-1-fix' as StationId, startedAt: start })).toMatchObject({ ok: false, why: { code: 'mixRefused' } })
  })

  it('is ticked in its order only, each step with its time, its person and its temperature', () => {
    const sheet = begun(developer, 'neg-1-dev')
    const asked = { cautions: cautionsFor(sheet, start + 1), person: marta!, now: start + 1, celsius: 45 }
    expect(tick(sheet, 1, asked)).toMatchObject({ ok: false, why: { code: 'outOfOrder', facts: { next: 'metol' } } })
    const done = tick(sheet, 0, asked)
    expect(done).toMatchObject({ ok: true, sheet: { ticks: [{ order: 0, at: start + 1, by: marta, celsius: 45 }] } })
    if (done.ok) expect(nextStep(done.sheet)!.substance).toBe('sodiumSulfite')
    expect(sheet.ticks).toEqual([])
  })

  it('keeps each amount behind its caution, that of weighing developing agents too', () => {
    const sheet = begun(developer, 'neg-1-dev')
    const step = sheet.steps[0]!
    expect(step.needsCaution.map(({ card }) => card)).toEqual(['metol', 'op-powder-developer'])
    expect(tick(sheet, 0, { cautions: [], person: marta!, now: start + 1 })).toMatchObject({ ok: false, why: { code: 'cautionFirst' }, needs: [{ card: 'metol' }, { card: 'op-powder-developer' }] })
    const cautions = cautionsFor(sheet, start + 1)
    expect(step.amount.reveal({ cautions, person: tomas!, now: start + 2 }).ok).toBe(false)
    expect(step.amount.reveal({ cautions, person: marta!, now: start + 2 })).toMatchObject({ ok: true, amount: 200, unit: 'g' })
    expect(JSON.stringify(sheet)).not.toContain('"amount":200')
  })

  it('does not take a confirmation of an earlier batch', () => {
    const sheet = begun(developer, 'neg-1-dev')
    expect(sheet.steps[0]!.amount.reveal({ cautions: cautionsFor(sheet, start - 1000), person: marta!, now: start + 1 }).ok).toBe(false)
  })

  it('asks for acid into water when the acid comes', () => {
    const acid = begun(fixingBath, 'neg-1-fix').steps.find(({ substance }) => substance === 'aceticAcid')!
    expect(acid.needsCaution.map(({ card }) => card)).toEqual(['acetic-acid-28', 'op-acid-dose'])
  })
})

describe('a new mix', () => {
  const given = { at: start + 3_600_000, by: marta!, pH: 8.6, specificGravity: 1.065, label: 'Developer, batch 12, 12 January' }
  const strip = { id: 'strip-1', verdict: 'IN' as const }

  it('may be connected only when it is certified: pH, specific gravity, label, and a developer by a strip', () => {
    const sheet = all(begun(developer, 'neg-1-dev'))
    expect(mayConnect(sheet)).toBe(false)
    const certified = certify(plan, sheet, { ...given, strip })
    expect(certified.ok && mayConnect(certified.sheet)).toBe(true)
  })

  it.each([
    ['pHNotInLimits', { ...given, pH: 8.7, strip }],
    ['specificGravityNotInLimits', { ...given, specificGravity: 1.05, strip }],
    ['noLabel', { ...given, label: ' ', strip }],
    ['stripMissing', given],
    ['stripNotInLimits', { ...given, strip: { ...strip, verdict: 'WARN' as const } }],
  ])('is held back: %s', (code, asked) => {
    expect(certify(plan, all(begun(developer, 'neg-1-dev')), asked)).toMatchObject({ ok: false, reasons: [{ code }] })
  })

  it('is held back while something is still to be dissolved', () => {
    expect(certify(plan, ticked(begun(developer, 'neg-1-dev')), { ...given, strip })).toMatchObject({ ok: false, reasons: [{ code: 'notAllIn' }] })
  })

  it('needs no strip where it is a fixing bath', () => {
    expect(certify(plan, all(begun(fixingBath, 'neg-1-fix')), { ...given, pH: 4.5 }).ok).toBe(true)
  })

  it('is judged by its own mix card where it is a replenisher, stronger than the bath', () => {
    const limits = { pH: { aim: 9, warningLow: 8.9, warningHigh: 9.1 }, specificGravity: { aim: 1.08, warningLow: 1.075, warningHigh: 1.085 } }
    const stronger = { ...given, pH: 9.02, specificGravity: 1.081, strip }
    expect(certify(plan, all(begun(developer, 'neg-1-dev')), stronger).ok).toBe(false)
    expect(certify(plan, all(begun(developer, 'neg-1-dev')), { ...stronger, limits }).ok).toBe(true)
  })
})

describe('mixing time', () => {
  it('is three turnovers for pH and five for a titration: 20 and 33 minutes for 1000 L at 150 L/min', () => {
    const bath = { litres: 1000, circulationLitresPerMinute: 150 }
    expect(mixingTime(bath, 'pH').seconds / 60).toBeCloseTo(20, 1)
    expect(mixingTime(bath, 'titration').seconds / 60).toBeCloseTo(33.3, 1)
  })
  it('is ten minutes more for acid into a fixing bath', () => {
    expect(mixingTime({ litres: 640, circulationLitresPerMinute: 160 }, 'pH', { slowAcid: true }).seconds).toBe(600 + 720)
  })
})
