import { calculation, type Step } from '../calculation.ts'
import { outside } from '../decimal.ts'
import { noAnswer, Refusal } from '../refusal.ts'
import { obstacleKinds, obstaclesOf } from './obstacles.ts'
import { bestCorrection, type Bath } from './program.ts'

interface GivenConstituent {
  name: string
  gramsPerLitre: number
  aimGramsPerLitre: number
  toleranceGramsPerLitre: number
  weight: number
}

interface GivenMaterial {
  name: string
  unit: 'g' | 'L'
  provides: { [constituent: string]: number }
  displacesLitresPerUnit?: number | undefined
  maxAmount?: number | undefined
}

interface Given {
  litres: number
  headroomLitres: number
  aimLitres?: number | undefined
  maxBleedLitres?: number | undefined
  constituents: GivenConstituent[]
  materials: GivenMaterial[]
}

/** A litre of liquid takes a litre; the room that a dissolved salt takes (some 0.3 mL/g) is neglected unless given. */
const displacement = ({ unit, displacesLitresPerUnit }: GivenMaterial): number => displacesLitresPerUnit ?? (unit === 'L' ? 1 : 0)

const bathOf = (given: Given): Bath => {
  const { litres, headroomLitres, constituents } = given
  return {
    litres,
    aimLitres: given.aimLitres ?? litres,
    mostLitres: litres + headroomLitres,
    maxBleedLitres: given.maxBleedLitres ?? litres,
    constituents,
    materials: given.materials.map((material) => ({
      name: material.name,
      // The least material counts a litre of liquid as a kilogram.
      gramsPerUnit: material.unit === 'L' ? 1000 : 1,
      provides: constituents.map(({ name }) => material.provides[name] ?? 0),
      displacesLitresPerUnit: displacement(material),
      maxAmount: material.maxAmount ?? Infinity,
    })),
  }
}

const assertTogether = ({ litres, headroomLitres, aimLitres, constituents, materials }: Given): void => {
  assertDistinct('constituents', constituents)
  assertDistinct('materials', materials)
  const names = constituents.map(({ name }) => name)
  materials.forEach(({ provides }, index) => {
    for (const name of Object.keys(provides))
      if (!names.includes(name))
        throw new Refusal({ code: 'unknownField', field: `materials[${index}].provides.${name}`, value: name, allowed: `constituents: ${names.join(', ')}` })
  })
  if (aimLitres !== undefined && (aimLitres < litres || aimLitres > litres + headroomLitres))
    throw noAnswer('aimLitres', aimLitres, `a number, from the ${litres} L in the bath to ${litres + headroomLitres} L with its headroom`)
}

const assertDistinct = (field: string, list: readonly { name: string }[]): void =>
  list.forEach(({ name }, index) => {
    if (list.findIndex((other) => other.name === name) < index) throw noAnswer(`${field}[${index}].name`, name, 'each name once')
  })

const addsOf = (materials: readonly GivenMaterial[], amounts: readonly number[]): { material: string; amount: number; unit: 'g' | 'L' }[] =>
  materials.map(({ name, unit }, index) => ({ material: name, amount: amounts[index]!, unit })).filter(({ amount }) => amount > 0)

/** Litres after bleed and adds, before water. */
const litresBeforeWater = ({ litres, materials }: Given, bleedLitres: number, amounts: readonly number[]): number =>
  materials.reduce((sum, material, index) => sum + displacement(material) * amounts[index]!, litres - bleedLitres)

const gramsAdded = (materials: readonly GivenMaterial[], amounts: readonly number[], name: string): number =>
  materials.reduce((sum, { provides }, index) => sum + (provides[name] ?? 0) * amounts[index]!, 0)

/**
 * Works out the least that brings a bath back: bleed first (well mixed, so that every constituent leaves at its own strength), then the
 * adds, then water to the aim level. Several constituents and materials are one system, solved as linear programs in
 * the order: within tolerance, least bleed, least material. See `bestCorrection`.
 */
export const bathCorrect = calculation({
  id: 'bath.correct',
  title: 'Bath correction',
  inputs: {
    litres: { kind: 'number', unit: 'L', says: 'volume of the bath now', above: 0 },
    headroomLitres: { kind: 'number', unit: 'L', says: 'room above the present level that the bath may take', atLeast: 0 },
    aimLitres: { kind: 'number', unit: 'L', says: 'volume at the level to which water is filled up; the present one when not given', above: 0, optional: true },
    maxBleedLitres: { kind: 'number', unit: 'L', says: 'most that may be bled; the whole bath when not given', atLeast: 0, optional: true },
    constituents: {
      kind: 'list',
      says: 'what the bath is judged by',
      atLeast: 1,
      atMost: 30,
      of: {
        kind: 'group',
        says: 'one constituent',
        fields: {
          name: { kind: 'text', says: 'its name' },
          gramsPerLitre: { kind: 'number', unit: 'g/L', says: 'strength found', atLeast: 0 },
          aimGramsPerLitre: { kind: 'number', unit: 'g/L', says: 'aim', atLeast: 0 },
          toleranceGramsPerLitre: { kind: 'number', unit: 'g/L', says: 'how far from the aim is right', atLeast: 0 },
          weight: { kind: 'number', unit: '1', says: 'how much a miss counts, where not all can be reached', above: 0, atMost: 1000, preset: 1 },
        },
      },
    },
    materials: {
      kind: 'list',
      says: 'what may be added, in the order of mixing',
      atMost: 30,
      of: {
        kind: 'group',
        says: 'one material',
        fields: {
          name: { kind: 'text', says: 'its name' },
          unit: { kind: 'choice', says: 'weighed or measured', of: ['g', 'L'] },
          provides: { kind: 'table', says: 'grams of each constituent in one unit of it', of: { kind: 'number', unit: 'g', says: 'grams per unit', atLeast: 0 } },
          displacesLitresPerUnit: {
            kind: 'number',
            unit: 'L',
            says: 'room that one unit takes; a litre for a liquid and none for a salt when not given',
            atLeast: 0,
            optional: true,
          },
          maxAmount: { kind: 'number', unit: '1', says: 'most that may be added or is at hand, in its unit', atLeast: 0, optional: true },
        },
      },
    },
  },
  outputs: {
    bleedLitres: { kind: 'number', unit: 'L', says: 'to bleed first' },
    adds: {
      kind: 'list',
      says: 'to add then, in this order',
      of: {
        kind: 'group',
        says: 'one add',
        fields: {
          material: { kind: 'text', says: 'material' },
          amount: { kind: 'number', unit: '1', says: 'how much, in the unit beside it' },
          unit: { kind: 'choice', says: 'unit', of: ['g', 'L'] },
        },
      },
    },
    waterLitres: { kind: 'number', unit: 'L', says: 'water to fill up with at the end' },
    after: {
      kind: 'list',
      says: 'the bath then',
      of: {
        kind: 'group',
        says: 'one constituent',
        fields: {
          name: { kind: 'text', says: 'its name' },
          gramsPerLitre: { kind: 'number', unit: 'g/L', says: 'strength after' },
          withinTolerance: { kind: 'flag', says: 'within its tolerance; on the edge counts as within' },
        },
      },
    },
    withinTolerance: { kind: 'flag', says: 'every constituent is within its tolerance' },
    afterLitres: { kind: 'number', unit: 'L', says: 'volume then' },
    miss: { kind: 'number', unit: '1', says: 'weighted sum of what lies outside the tolerances, in tolerances (of a tolerance of 0: in hundredths of the aim)' },
    obstacles: {
      kind: 'list',
      says: 'what stands in the way where not all is within tolerance, most in the way first',
      of: {
        kind: 'group',
        says: 'one obstacle',
        fields: {
          kind: { kind: 'choice', says: 'what it is', of: obstacleKinds },
          name: { kind: 'text', says: 'material or constituent it is about; empty for headroom and bleed' },
          missWithout: { kind: 'number', unit: '1', says: 'miss that would be left, were it out of the way (and the first of each turn before)' },
          turn: {
            kind: 'number',
            unit: '1',
            says: 'obstacles of one turn are alternatives; those of the next remain when the first of each turn before is out of the way',
            whole: true,
          },
        },
      },
    },
  },
  formula:
    'grams after = strength × (litres − bleed) + Σ amount × grams per unit; litres after = litres − bleed + Σ amount × room per unit + water; least bleed, then least material, within the tolerances',
  source: 'mass balance; linear programming: simplex method, Dantzig 1947',
  domain:
    'Well mixed before the bleed and after the adds; no reaction between adds (an acid–base change is a dose of its own). The room that dissolved salts take is neglected unless given. ' +
    'A band, not the aim, is reached with the least material: give a tolerance of 0 to land on the aim. Amounts are computed, not staged: pour, mix and read again in portions.',
  example: {
    inputs: {
      litres: 500,
      headroomLitres: 0,
      constituents: [
        { name: 'metol', gramsPerLitre: 1.8, aimGramsPerLitre: 2, toleranceGramsPerLitre: 0 },
        { name: 'hydroquinone', gramsPerLitre: 4.4, aimGramsPerLitre: 5, toleranceGramsPerLitre: 0 },
        { name: 'sodium sulfite', gramsPerLitre: 95, aimGramsPerLitre: 100, toleranceGramsPerLitre: 0 },
        { name: 'borax', gramsPerLitre: 1.9, aimGramsPerLitre: 2, toleranceGramsPerLitre: 0 },
        { name: 'potassium bromide', gramsPerLitre: 1.3, aimGramsPerLitre: 1, toleranceGramsPerLitre: 0 },
      ],
      materials: [
        { name: 'metol', unit: 'g', provides: { metol: 1 } },
        { name: 'sodium sulfite', unit: 'g', provides: { 'sodium sulfite': 1 } },
        { name: 'hydroquinone', unit: 'g', provides: { hydroquinone: 1 } },
        { name: 'borax', unit: 'g', provides: { borax: 1 } },
      ],
    },
    result: {
      bleedLitres: 115.385,
      adds: [
        { material: 'metol', amount: 307.69, unit: 'g' },
        { material: 'sodium sulfite', amount: 13461.54, unit: 'g' },
        { material: 'hydroquinone', amount: 807.69, unit: 'g' },
        { material: 'borax', amount: 269.23, unit: 'g' },
      ],
      waterLitres: 115.385,
      withinTolerance: true,
    },
    tolerance: 5e-3,
    source: 'worked by hand: bleed = 500 × (1 − 1.0 ÷ 1.3), set by bromide',
  },
  run: (given) => {
    assertTogether(given)
    const bath = bathOf(given)
    const correction = bestCorrection(bath)
    const { bleedLitres, amounts, miss } = correction
    const beforeWater = litresBeforeWater(given, bleedLitres, amounts)
    const waterLitres = Math.max(0, bath.aimLitres - beforeWater)
    const afterLitres = beforeWater + waterLitres
    const after = given.constituents.map(({ name, gramsPerLitre, aimGramsPerLitre, toleranceGramsPerLitre }) => {
      const grams = gramsPerLitre * (given.litres - bleedLitres) + gramsAdded(given.materials, amounts, name)
      const strength = grams / afterLitres
      const limits = { lower: aimGramsPerLitre - toleranceGramsPerLitre, upper: aimGramsPerLitre + toleranceGramsPerLitre }
      return { name, gramsPerLitre: strength, withinTolerance: !outside(strength, limits) }
    })
    return {
      bleedLitres,
      adds: addsOf(given.materials, amounts),
      waterLitres,
      after,
      withinTolerance: after.every((each) => each.withinTolerance),
      afterLitres,
      miss,
      obstacles: obstaclesOf(bath, correction),
    }
  },
  steps: ({ litres, constituents, materials }, { bleedLitres, adds, waterLitres, after, afterLitres }): Step[] => [
    { says: 'bleed, well mixed', formula: 'least with which every constituent can come within its tolerance', value: bleedLitres, unit: 'L' },
    ...adds.map(({ material, amount, unit }) => ({ says: `add ${material}`, value: amount, unit })),
    { says: 'water to the level', formula: 'litres at the aim level − (litres − bleed + room of the adds)', value: waterLitres, unit: 'L' },
    { says: 'volume then', value: afterLitres, unit: 'L' },
    ...constituents.flatMap(({ name, gramsPerLitre, aimGramsPerLitre, toleranceGramsPerLitre }, index) => [
      { says: `${name} left after the bleed`, formula: `${gramsPerLitre} × (${litres} − bleed)`, value: gramsPerLitre * (litres - bleedLitres), unit: 'g' },
      {
        says: `${name} brought by the adds`,
        formula: 'Σ amount × grams per unit',
        value: adds.reduce((sum, add) => sum + add.amount * (materials.find((each) => each.name === add.material)?.provides[name] ?? 0), 0),
        unit: 'g',
      },
      {
        says: `${name} then, aim ${aimGramsPerLitre} ± ${toleranceGramsPerLitre}`,
        formula: '(left + brought) ÷ volume',
        value: after[index]!.gramsPerLitre,
        unit: 'g/L',
      },
    ]),
  ],
})
