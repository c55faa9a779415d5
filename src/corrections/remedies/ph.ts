import type { Material } from '../../plan/material.ts'
import { acidBaseDose } from '../../science/acidBase/dose.ts'
import { evaluate } from '../../science/evaluate.ts'
import type { Substance } from '../../science/substances.ts'
import type { Form } from '../../science/substances-table.ts'
import { bathNow } from '../bath-now.ts'
import { withPoured } from '../poured-into.ts'
import { foundBy, isCurrent, readingsAt } from '../lookup.ts'
import type { Situation } from '../situation.ts'
import type { ComputedDose } from './dose.ts'

/** A reagent as `acidBase.dose` takes it. */
export const reagentOf = ({ substance, strength }: Material) => {
  const name = substance as Substance
  switch (strength.kind) {
    case 'molar':
      return { substance: name, molPerLitre: strength.molPerLitre }
    case 'percent':
      return { substance: name, percentByMass: strength.percentByMass, gramsPerMillilitre: strength.gramsPerMillilitre }
    case 'solid':
      return { substance: name, form: strength.form as Form }
  }
}

/** The bath's temperature as last read, or its aim where no reading still speaks; doses of acid have been held back by then. */
export const celsiusOf = ({ lab, plan, station, now }: Pick<Situation, 'lab' | 'plan' | 'station' | 'now'>): number => {
  const [check] = readingsAt(plan, station.id, 'temperature').filter(({ unit }) => unit === '°C')
  if (!check) return defaultCelsius
  const found = foundBy(lab, check, now)
  return found && isCurrent(lab, plan, check, found.mark, now) ? found.value : check.limits.aim
}

/** Where the plan has no temperature check at all: black-and-white baths stand near it. Common practice, no source. */
const defaultCelsius = 21

/** The amount that brings a pH to its aim, by the acid–base engine anchored to the reading. Throws `Refusal` where there is none. */
export const phDose = (situation: Situation, material: Material, factor: number): ComputedDose => {
  const { lab, plan, station, now, check, value, bath } = situation
  if (check.kind !== 'reading' || value === undefined || !bath) throw new Error('a pH dose needs a pH reading of a bath')
  const inputs = {
    celsius: celsiusOf(situation),
    litres: bath.litres,
    bath: withPoured(bathNow(lab, plan, station, now), { lab, plan, station, readAt: situation.mark.time, now }),
    measuredPh: value,
    aimPh: check.limits.aim,
    reagent: reagentOf(material),
    responseFactor: factor,
  }
  const { result, steps } = evaluate(acidBaseDose, inputs)
  // Between nothing, the first portion and the whole the engine's own pH, and straight lines between: off by less than 0.01 pH.
  const points: readonly [number, number][] = [
    [0, value], [result.firstPortion * factor, result.firstPortionPh], [result.amount * factor, result.predictedPh],
  ]
  return {
    whole: result.amount * factor,
    firstShare: result.amount === 0 ? 1 : result.firstPortion / result.amount,
    predicts: { quantity: 'pH', from: value, after: (amount) => along(points, amount) },
    working: { calculation: acidBaseDose.id, inputs, result, steps },
  }
}

/** Straight lines through points in order, the last one prolonged. */
const along = (points: readonly [number, number][], x: number): number => {
  const distinct = points.filter(([at], index) => index === 0 || at > points[index - 1]![0])
  const upper = Math.max(1, distinct.findIndex(([at]) => at >= x))
  const [b, a] = upper < distinct.length && distinct.some(([at]) => at >= x) ? [distinct[upper]!, distinct[upper - 1]!] : [distinct.at(-1)!, distinct.at(-2) ?? distinct.at(-1)!]
  return b[0] === a[0] ? a[1] : a[1] + ((b[1] - a[1]) * (x - a[0])) / (b[0] - a[0])
}
