import { describe, expect, it } from 'vitest'
import { demoLab } from '../../src/demo/lab.ts'
import { inWords, type SayInWords } from '../../src/plan/in-words.ts'
import { parsePlan } from '../../src/plan/plan-problems.ts'
import { firstPlan, typicalShifts } from '../../src/plan/template/first-plan.ts'
import { typicalStations } from '../../src/plan/template/stations.ts'
import { names as ofDemo, shorts } from '../../src/ui/words/es/plan-names/demo.ts'
import { names as ofTypical, shorts as typicalShorts } from '../../src/ui/words/es/plan-names/typical.ts'

/** The same in both languages: names of people, of the laboratory, and what is written alike. `densitometer` is a key of the record. */
const alike = /^(Harbour Lane Film Laboratory|Marta Quintela|Tomás Aldeia|Helena Sobral|densitometer|112|Metol|Instr|ISO 18917)$/

/** Every sentence that `inWords` asks for. */
const askedOf = (part: unknown): Set<string> => {
  const asked = new Set<string>()
  inWords(part, (english, key) => {
    if (key !== 'short') asked.add(english)
    return english
  })
  return asked
}
const typical = (stock: 'negative' | 'positive', say?: SayInWords) =>
  firstPlan({
    name: 'Harbour Lane Film Laboratory', timeZone: 'Europe/Lisbon', units: { temperature: '°C', volume: 'L', mass: 'g', length: 'm' }, people: [{ id: 'marta', name: 'Marta Quintela', role: 'supervisor' }], shifts: typicalShifts, emergency: { calls: [], eyewash: '112', assembly: '112' },
    machine: { name: '112', stock, light: 'panchromatic', gaugeMillimetres: 35, metresPerMinute: 30, stations: typicalStations.map(({ as }) => as) },
  }, say)

describe('what a plan begins with, in Spanish', () => {
  it('has a word for everything that a person reads in the invented laboratory', () => {
    expect([...askedOf(demoLab())].filter((it) => !alike.test(it) && !(it in ofDemo) && /\p{L}{2}/u.test(it))).toEqual([])
  })

  it('has a word for everything that a person reads of a typical machine', () => {
    const asked = new Set([...askedOf(typical('negative')), ...askedOf(typical('positive'))])
    expect([...asked].filter((it) => !alike.test(it) && !(it in ofTypical))).toEqual([])
  })

  it('holds as a plan: ids, units and keys are what they were', () => {
    const say: SayInWords = (english, key) => (key === 'short' ? shorts : ofDemo)[english] ?? english
    const parsed = parsePlan(inWords(demoLab(), say))
    expect(parsed.ok ? [] : parsed.problems).toEqual([])
    expect(parsed.ok && parsed.plan.checks.map(({ id }) => id)).toEqual(demoLab().checks.map(({ id }) => id))
    const first = parsePlan(typical('negative', (english, key) => (key === 'short' ? typicalShorts : ofTypical)[english] ?? english))
    expect(first.ok ? [] : first.problems).toEqual([])
    expect(first.ok && first.plan.checks.map(({ id }) => id)).toEqual(typical('negative').checks.map(({ id }) => id))
    expect(first.ok && first.plan.checks.find(({ id }) => id.endsWith('fix-ph'))?.name).toBe('pH del fijador')
  })

  it('keeps every figure, and denies where the English denies', () => {
    const figures = (text: string): string[] => (text.match(/\d+([.,]\d+)*/g) ?? []).map((it) => it.replace(',', '.')).sort()
    expect(Object.entries(ofDemo).filter(([english, it]) => figures(english).join() !== figures(it).join())).toEqual([])
    const denies = /\b(never|no|not|nobody|nothing|without)\b/i
    const niega = /\b(nunca|no|ni|ninguna?|nadie|nada|sin|fuera|apagad[ao]s?)\b/i
    expect(Object.entries(ofDemo).filter(([english, it]) => denies.test(english) && !niega.test(it))).toEqual([])
  })

  it('fits the drawing of the film’s path: a short name has seven letters at most', () => {
    const asked = demoLab().machines.flatMap(({ stations }) => stations.map(({ short }) => short))
    expect([...new Set(asked)].sort()).toEqual(Object.keys(shorts).sort())
    expect(typicalStations.map(({ short }) => short).filter((it) => !(it in typicalShorts))).toEqual([])
    expect(Object.values(shorts).filter((it) => it.length > 7)).toEqual([])
  })
})
