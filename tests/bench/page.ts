import { acidBaseDose } from '../../src/science/acidBase/dose.ts'
import { bathCorrect } from '../../src/science/bath/correct.ts'
import { resultOf } from '../../src/science/evaluate.ts'

/** What the benchmark calls in the browser: each returns the time of every call, the first ones too. */
export interface BenchPage {
  correct(calls: number): number[]
  dose(calls: number): number[]
}

const names = ['metol', 'hydroquinone', 'sodiumSulfite', 'borax', 'boricAcid', 'potassiumBromide', 'sodiumCarbonate', 'sodiumBicarbonate'] as const
const aims = [1.5, 1.5, 75, 3, 4, 0.7, 20, 2] as const
/** Solids one for each constituent, and two solutions that bring two at a time. */
const materials = [
  ...names.map((name) => ({ name, unit: 'g' as const, provides: { [name]: 1 } })),
  { name: 'agents in solution', unit: 'L' as const, provides: { metol: 20, sodiumSulfite: 100 } },
  { name: 'alkali in solution', unit: 'L' as const, provides: { sodiumCarbonate: 200, potassiumBromide: 2 } },
]

const timesOf = (calls: number, work: (call: number) => unknown): number[] =>
  Array.from({ length: calls }, (_, call) => {
    const began = performance.now()
    work(call)
    return performance.now() - began
  })

/** From 0.8 to 1.2 of the aim, another pattern at every call. */
const off = (call: number, index: number): number => 0.8 + (((call * 7 + index * 13) % 41) / 41) * 0.4

const page: BenchPage = {
  correct: (calls) =>
    timesOf(calls, (call) =>
      resultOf(bathCorrect, {
        litres: 1000, headroomLitres: 40,
        constituents: names.map((name, index) => ({ name, gramsPerLitre: aims[index]! * off(call, index), aimGramsPerLitre: aims[index]!, toleranceGramsPerLitre: aims[index]! * 0.03 })),
        materials,
      }),
    ),
  dose: (calls) =>
    timesOf(calls, (call) =>
      resultOf(acidBaseDose, {
        celsius: 21, litres: 640, measuredPh: 4.7 + (call % 40) / 100, aimPh: 4.5,
        bath: [
          { substance: 'sodiumThiosulfate', form: 'pentahydrate', gramsPerLitre: 240 }, { substance: 'sodiumSulfite', gramsPerLitre: 12 },
          { substance: 'aceticAcid', gramsPerLitre: 13.9 }, { substance: 'boricAcid', gramsPerLitre: 7.5 }, { substance: 'potassiumAlum', form: 'dodecahydrate', gramsPerLitre: 15 },
        ],
        reagent: { substance: 'aceticAcid', percentByMass: 28, gramsPerMillilitre: 1.0361 },
      }),
    ),
}
Object.assign(globalThis, { benchPage: page })
