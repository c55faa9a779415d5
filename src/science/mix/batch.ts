import { calculation, type Step } from '../calculation.ts'
import { above } from '../decimal.ts'
import type { Values } from '../field.ts'
import { noAnswer } from '../refusal.ts'
import { factsOf, gramsPerMoleOf, type Substance } from '../substances.ts'
import { cautionsFor } from './cautions.ts'
import { form, substance } from './fields.ts'
import { isAcid, isAlum, isSulfite, isThiosulfate, safeOrder, type Listed } from './order.ts'

const inputs = {
  formula: {
    kind: 'group',
    says: 'what a litre of the bath is made of',
    fields: {
      name: { kind: 'text', says: 'name of the formula' },
      steps: {
        kind: 'list',
        says: 'in the order in which they are dissolved',
        atLeast: 1,
        atMost: 40,
        of: {
          kind: 'group',
          says: 'one substance',
          fields: {
            substance,
            form: { ...form('what is weighed; anhydrous unless it says otherwise'), optional: true },
            gramsPerLitre: { kind: 'number', unit: 'g/L', says: 'mass in a litre of the bath', above: 0, atMost: 1000, optional: true },
            millilitresPerLitre: { kind: 'number', unit: 'mL/L', says: 'volume of a liquid or a solution in a litre of the bath', above: 0, atMost: 1000, optional: true },
          },
          exactlyOne: [['gramsPerLitre', 'millilitresPerLitre']],
        },
      },
    },
  },
  litres: { kind: 'number', unit: 'L', says: 'bath to mix', above: 0, atMost: 1_000_000 },
  startWaterFraction: { kind: 'number', unit: '1', says: 'share of the volume that is water at the start', above: 0, atMost: 1, preset: 0.75 },
} as const

type Given = Values<typeof inputs>
type FormulaStep = Given['formula']['steps'][number]

/** What the order of mixing cannot mend. */
const refuseUnsafe = (steps: readonly FormulaStep[]): void => {
  const find = (test: (substance: Substance) => boolean): number => steps.findIndex((step) => test(step.substance))
  const field = (index: number): string => `formula.steps[${index}].substance`
  const fixing = find(isThiosulfate) >= 0
  const strong = find((it) => factsOf(it).nature === 'strongAcid')
  if (fixing && strong >= 0) throw noAnswer(field(strong), steps[strong]!.substance, 'a weak acid (acetic acid, citric acid) in a fixing bath: a strong acid frees sulfur and sulfur dioxide from thiosulfate')
  const acid = find(isAcid)
  if (fixing && acid >= 0 && find(isSulfite) < 0) throw noAnswer(field(acid), steps[acid]!.substance, 'acid in a fixing bath only with sulfite in the formula: without it acid frees sulfur from thiosulfate')
  const alum = find(isAlum)
  if (alum >= 0 && acid < 0 && find(isSulfite) >= 0) throw noAnswer(field(alum), steps[alum]!.substance, 'alum beside sulfite only with an acid in the formula: without it aluminium sulfite sludge comes down')
}

/** Volume that must have room: the water at the start and every liquid. Solids are taken to dissolve into the rest. */
const refuseOverfull = ({ formula: { steps }, startWaterFraction }: Given): void => {
  const liquids = steps.reduce((sum, step) => sum + (step.millilitresPerLitre ?? 0), 0) / 1000
  if (above(startWaterFraction + liquids, 1)) throw noAnswer('startWaterFraction', startWaterFraction, `at most ${Number((1 - liquids).toPrecision(6))}, so that the liquids of the formula have room`)
}

const listed = (steps: readonly FormulaStep[]): Listed[] => {
  const total = steps.reduce((sum, step) => sum + (isSulfite(step.substance) ? (step.gramsPerLitre ?? 0) : 0), 0)
  return steps.map(({ substance: key, gramsPerLitre }) => ({ substance: key, sulfiteShare: gramsPerLitre === undefined ? 1 : gramsPerLitre / total }))
}

const noteOn = ({ substance: key, millilitresPerLitre }: FormulaStep, moved: string | undefined): string => {
  const { nature, liquid, name } = factsOf(key)
  const notes = [
    moved,
    nature === 'acid' || nature === 'strongAcid' ? 'slowly into the stirred solution, never the other way' : undefined,
    nature === 'hydroxide' ? 'little by little, the solution cold: it heats' : undefined,
    isAlum(key) ? 'solution cooled, acid in' : undefined,
    isThiosulfate(key) ? 'until fully dissolved; it chills the water' : undefined,
    millilitresPerLitre !== undefined && !liquid && nature !== 'acid' ? `as a solution of ${name}` : undefined,
  ].filter((note) => note !== undefined)
  return notes.length > 0 ? notes.join('; ') : 'until dissolved'
}

export const mixBatch = calculation({
  id: 'mix.batch',
  title: 'Mixing sheet for a batch',
  inputs,
  outputs: {
    startWaterLitres: { kind: 'number', unit: 'L', says: 'water to begin with' },
    steps: {
      kind: 'list',
      says: 'what goes in, in a safe order',
      of: {
        kind: 'group',
        says: 'one substance',
        fields: {
          order: { kind: 'number', unit: '1', says: 'place in the order, from 0', whole: true },
          substance,
          form: { ...form('what is weighed'), optional: true },
          amount: { kind: 'number', unit: 'g or mL', says: 'for the whole batch' },
          unit: { kind: 'choice', of: ['g', 'mL'], says: 'unit of the amount' },
          note: { kind: 'text', says: 'how it goes in, and why it was moved' },
        },
      },
    },
    toLitres: { kind: 'number', unit: 'L', says: 'water to this mark at the end' },
    moved: { kind: 'list', of: { kind: 'choice', of: substance.of, says: 'substance' }, says: 'what was moved from the formula’s order to keep it safe' },
    cautions: { kind: 'list', of: { kind: 'text', says: 'a caution' }, says: 'to read before mixing' },
  },
  formula: 'amount = per litre × litres; order: metol, sulfite, hydroquinone; in a fixing bath thiosulfate, sulfite, acid, alum last',
  source: 'Studio periodicals 1916 and 1918; Trans. SMPE 13 (1929), 400; J. SMPE 14 (1930); metol before sulfite: common practice, no source',
  domain: 'Developers, stop baths and fixing baths of the listed substances. Refuses acid in a fixing bath without sulfite, strong acid in a fixing bath, and alum beside sulfite without acid.',
  example: {
    inputs: {
      formula: {
        name: 'acid hardening fixing bath',
        steps: [
          { substance: 'sodiumThiosulfate', form: 'pentahydrate', gramsPerLitre: 240 },
          { substance: 'aceticAcid', millilitresPerLitre: 48 },
          { substance: 'sodiumSulfite', gramsPerLitre: 15 },
          { substance: 'potassiumAlum', form: 'dodecahydrate', gramsPerLitre: 15 },
        ],
      },
      litres: 100,
      startWaterFraction: 0.6,
    },
    result: { startWaterLitres: 60, toLitres: 100, moved: ['aceticAcid'] },
    tolerance: 1e-9,
    source: 'formula of the open literature; the order is the rule’s',
  },
  run: (given) => {
    const { formula, litres, startWaterFraction } = given
    formula.steps.forEach((step, index) => gramsPerMoleOf(step.substance, step.form ?? 'anhydrous', `formula.steps[${index}].form`))
    refuseUnsafe(formula.steps)
    refuseOverfull(given)
    const placed = safeOrder(listed(formula.steps))
    return {
      startWaterLitres: litres * startWaterFraction,
      steps: placed.map(({ index, waitedFor }, order) => {
        const step = formula.steps[index]!
        const moved = waitedFor && `moved after ${factsOf(formula.steps[waitedFor.index]!.substance).name}: ${waitedFor.because}`
        return {
          order,
          substance: step.substance,
          ...(step.form === undefined ? {} : { form: step.form }),
          amount: (step.gramsPerLitre ?? step.millilitresPerLitre!) * litres,
          unit: step.gramsPerLitre === undefined ? ('mL' as const) : ('g' as const),
          note: noteOn(step, moved),
        }
      }),
      toLitres: litres,
      moved: placed.flatMap(({ index, waitedFor }) => (waitedFor ? [formula.steps[index]!.substance] : [])),
      cautions: cautionsFor(formula.steps.map((step) => step.substance)),
    }
  },
  steps: ({ formula, litres }, { startWaterLitres, steps, toLitres, cautions }): Step[] => [
    ...cautions.map((text) => ({ says: 'caution', value: text })),
    { says: 'water to begin with', formula: 'start fraction × litres', value: startWaterLitres, unit: 'L' },
    ...steps.map(({ substance: key, form: crystal, amount, unit, note }) => ({
      says: `${factsOf(key).name}${crystal && crystal !== 'anhydrous' ? `, ${crystal}` : ''}: ${note}`,
      formula: `per litre × ${litres} L`,
      value: amount,
      unit,
    })),
    { says: `water to the mark, ${formula.name}`, value: toLitres, unit: 'L' },
  ],
})
