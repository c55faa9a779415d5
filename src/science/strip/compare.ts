import { calculation } from '../calculation.ts'
import { tidy } from '../decimal.ts'
import { noAnswer, Refusal } from '../refusal.ts'

type Densities = { [step: string]: number }

/** Steps read on the strip, each with its aim: reference density + the batch's correction. */
const aimsOf = (given: { reference: Densities; correction: Densities }): Densities =>
  Object.fromEntries(Object.entries(given.reference).map(([step, density]) => [step, tidy(density + (given.correction[step] ?? 0))]))

const assertKnown = (field: string, densities: Densities, reference: Densities): void => {
  const known = Object.keys(reference)
  for (const step of Object.keys(densities))
    if (!known.includes(step)) throw new Refusal({ code: 'unknownField', field: `${field}.${step}`, value: step, allowed: `steps of the reference: ${known.join(', ')}` })
}

/**
 * How far a control strip lies from its aims. The aim of a step is the reference strip's density, read on this laboratory's
 * own densitometer, plus the batch's printed correction. A contrast (upper minus lower step) may be compared as well.
 */
export const stripCompare = calculation({
  id: 'strip.compare',
  title: 'Control strip against its reference',
  inputs: {
    reference: { kind: 'table', says: 'densities of the reference strip by step', of: { kind: 'number', unit: '1', says: 'density', atLeast: -0.1, atMost: 6 } },
    strip: { kind: 'table', says: 'densities of the strip by step', of: { kind: 'number', unit: '1', says: 'density', atLeast: -0.1, atMost: 6 } },
    correction: {
      kind: 'table',
      says: 'corrections printed for this batch of strips, by step',
      of: { kind: 'number', unit: '1', says: 'correction', atLeast: -1, atMost: 1 },
      optional: true,
    },
    contrast: {
      kind: 'group',
      says: 'two steps whose difference stands for contrast',
      fields: { upper: { kind: 'text', says: 'the denser step' }, lower: { kind: 'text', says: 'the thinner step' } },
      optional: true,
    },
  },
  outputs: {
    deviations: { kind: 'table', says: 'strip minus aim, by step', of: { kind: 'number', unit: '1', says: 'deviation' } },
    aims: { kind: 'table', says: 'aim by step', of: { kind: 'number', unit: '1', says: 'aim' } },
    notRead: { kind: 'list', says: 'steps of the reference that were not read', of: { kind: 'text', says: 'step' } },
    contrastAim: { kind: 'number', unit: '1', says: 'aim of upper minus lower step', orNull: true },
    contrastDeviation: { kind: 'number', unit: '1', says: 'its deviation', orNull: true },
  },
  formula: 'aim = reference + correction; deviation = strip − aim; contrast = upper − lower step',
  source: 'makers’ instructions for control strips (reference + correction factor); US Navy, Photography (Basic) NAVEDTRA 14209, 1993, chapter 10 (HD − LD)',
  domain: 'Reference and strip read on the same densitometer. Steps that were not read are named, not taken as zero.',
  example: {
    inputs: {
      reference: { LD: 0.58, HD: 1.31, Dmin: 0.23 },
      correction: { LD: 0.02, HD: -0.03, Dmin: 0 },
      strip: { LD: 0.66, HD: 1.36, Dmin: 0.25 },
      contrast: { upper: 'HD', lower: 'LD' },
    },
    result: { deviations: { LD: 0.06, HD: 0.08, Dmin: 0.02 }, aims: { LD: 0.6, HD: 1.28, Dmin: 0.23 }, contrastAim: 0.68, contrastDeviation: 0.02 },
    tolerance: 1e-9,
    source: 'worked by hand',
  },
  run: ({ reference, strip, correction = {}, contrast }) => {
    assertKnown('strip', strip, reference)
    assertKnown('correction', correction, reference)
    if (Object.keys(strip).length === 0) throw noAnswer('strip', strip, `at least one of the steps ${Object.keys(reference).join(', ')}`)
    const aims = aimsOf({ reference, correction })
    const deviations = Object.fromEntries(Object.entries(strip).map(([step, density]) => [step, tidy(density - aims[step]!)]))
    return {
      deviations,
      aims,
      notRead: Object.keys(reference).filter((step) => strip[step] === undefined),
      ...contrastOf(contrast, aims, strip),
    }
  },
  steps: ({ strip, contrast }, { deviations, aims, contrastAim, contrastDeviation }) => [
    ...Object.keys(strip).flatMap((step) => [
      { says: `aim of ${step}`, formula: 'reference + correction', value: aims[step]!, unit: '1' },
      { says: `deviation of ${step}`, formula: `${strip[step]} − ${aims[step]}`, value: deviations[step]!, unit: '1' },
    ]),
    ...(contrast && contrastAim !== null ? [{ says: 'aim of the contrast', formula: `${contrast.upper} − ${contrast.lower}`, value: contrastAim, unit: '1' }] : []),
    ...(contrastDeviation !== null ? [{ says: 'deviation of the contrast', value: contrastDeviation, unit: '1' }] : []),
  ],
})

/** Null where no contrast was asked for, or where one of its steps was not read. */
const contrastOf = (
  contrast: { upper: string; lower: string } | undefined,
  aims: Densities,
  strip: Densities,
): { contrastAim: number | null; contrastDeviation: number | null } => {
  if (!contrast) return { contrastAim: null, contrastDeviation: null }
  const { upper, lower } = contrast
  for (const [name, step] of Object.entries(contrast))
    if (aims[step] === undefined)
      throw new Refusal({ code: 'notAChoice', field: `contrast.${name}`, value: step, allowed: `one of ${Object.keys(aims).join(', ')}` })
  const contrastAim = tidy(aims[upper]! - aims[lower]!)
  const high = strip[upper]
  const low = strip[lower]
  return { contrastAim, contrastDeviation: high === undefined || low === undefined ? null : tidy(high - low - contrastAim) }
}
