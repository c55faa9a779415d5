import { calculation } from '../calculation.ts'
import { noAnswer } from '../refusal.ts'

interface Tank {
  litres: number
  gramsPerLitre: number
  replenisherGramsPerLitre: number
  millilitresPerMetre: number
  consumedGramsPerMetre: number
}

const turnsPerMetre = ({ litres, millilitresPerMetre }: Tank): number => millilitresPerMetre / 1000 / litres

/** C∞ = strength of the replenisher − consumed ÷ rate; undefined without replenishment, where nothing holds the bath. */
const asymptote = (tank: Tank): number | undefined => {
  if (tank.millilitresPerMetre > 0) return tank.replenisherGramsPerLitre - tank.consumedGramsPerMetre / (tank.millilitresPerMetre / 1000)
  return tank.consumedGramsPerMetre === 0 ? tank.gramsPerLitre : undefined
}

/** C = C∞ + (C₀ − C∞)·e^(−turnovers), written with expm1 so that a weak rate goes over into the straight line of none. */
const strengthAfter = (tank: Tank, metres: number): number => {
  const turnovers = turnsPerMetre(tank) * metres
  const shareReplaced = -Math.expm1(-turnovers)
  const metresThatCount = turnovers === 0 ? metres : (shareReplaced / turnovers) * metres
  return (
    tank.gramsPerLitre +
    (tank.replenisherGramsPerLitre - tank.gramsPerLitre) * shareReplaced -
    (tank.consumedGramsPerMetre * metresThatCount) / tank.litres
  )
}

/** Length of film after which nothing is left; null when that never comes. */
const metresToNothing = (tank: Tank): number | null => {
  const end = asymptote(tank)
  if (end === undefined) return tank.consumedGramsPerMetre > 0 ? (tank.gramsPerLitre * tank.litres) / tank.consumedGramsPerMetre : null
  if (end >= 0) return null
  return Math.log((tank.gramsPerLitre - end) / -end) / turnsPerMetre(tank)
}

/**
 * Strength of one constituent of a well-mixed tank after a length of film.
 *
 * V·dC/dm = q·(C_in − C) − g; volume constant, what comes in goes out at the bath's strength. Neglected: water that film
 * brings and liquid that it carries out beyond the replenisher's volume, evaporation, oxidation by air.
 */
export const bathDrift = calculation({
  id: 'bath.drift',
  title: 'Drift of a replenished bath',
  inputs: {
    litres: { kind: 'number', unit: 'L', says: 'volume of the bath', above: 0 },
    gramsPerLitre: { kind: 'number', unit: 'g/L', says: 'strength now', atLeast: 0 },
    replenisherGramsPerLitre: { kind: 'number', unit: 'g/L', says: 'strength of the replenisher', atLeast: 0 },
    millilitresPerMetre: { kind: 'number', unit: 'mL/m', says: 'replenisher for each metre of film', atLeast: 0 },
    consumedGramsPerMetre: { kind: 'number', unit: 'g/m', says: 'what each metre of film takes out of the bath; negative when film gives it off' },
    metres: { kind: 'number', unit: 'm', says: 'length of film to be run', atLeast: 0 },
  },
  outputs: {
    gramsPerLitre: { kind: 'number', unit: 'g/L', says: 'strength after that length' },
    steadyGramsPerLitre: { kind: 'number', unit: 'g/L', says: 'strength at which the bath would settle; null when it would run out or go on rising', orNull: true },
    exhaustedAtMetres: { kind: 'number', unit: 'm', says: 'length of film after which nothing is left; null when that never comes', orNull: true },
    turnovers: { kind: 'number', unit: '1', says: 'replenisher brought, in volumes of the bath' },
  },
  formula: 'C = C∞ + (C₀ − C∞)·e^(−q·m ÷ V), C∞ = strength of the replenisher − consumed ÷ q',
  source: 'balance of a well-mixed tank with constant volume',
  domain:
    'Well mixed, constant volume, steady footage. Water brought in by film, carry-over beyond the replenisher’s volume, evaporation and oxidation are neglected: ' +
    'set consumption from analyses of the bath itself.',
  example: {
    inputs: { litres: 600, gramsPerLitre: 0.5, replenisherGramsPerLitre: 0, millilitresPerMetre: 5, consumedGramsPerMetre: -0.008, metres: 48000 },
    result: { gramsPerLitre: 0.8626, steadyGramsPerLitre: 1.6, exhaustedAtMetres: null, turnovers: 0.4 },
    tolerance: 5e-5,
    source: 'bromide given off, worked by hand',
  },
  run: ({ metres, ...tank }) => {
    const exhaustedAtMetres = metresToNothing(tank)
    if (exhaustedAtMetres !== null && metres > exhaustedAtMetres * (1 + 1e-9))
      throw noAnswer('metres', metres, `a number, at most ${exhaustedAtMetres} m, after which nothing is left in the bath`)
    const steady = asymptote(tank)
    return {
      gramsPerLitre: Math.max(0, strengthAfter(tank, metres)),
      steadyGramsPerLitre: steady === undefined || steady < 0 ? null : steady,
      exhaustedAtMetres,
      turnovers: turnsPerMetre(tank) * metres,
    }
  },
  steps: (_, { gramsPerLitre, steadyGramsPerLitre, exhaustedAtMetres, turnovers }) => [
    { says: 'replenisher brought, in volumes of the bath', formula: 'rate × metres ÷ litres', value: turnovers, unit: '1' },
    {
      says: 'strength at which the bath would settle, C∞',
      formula: 'strength of the replenisher − consumed ÷ rate',
      value: steadyGramsPerLitre ?? 'none',
      unit: 'g/L',
    },
    { says: 'strength after this length', formula: 'C∞ + (C₀ − C∞)·e^(−turnovers)', value: gramsPerLitre, unit: 'g/L' },
    ...(exhaustedAtMetres === null ? [] : [{ says: 'nothing is left after', value: exhaustedAtMetres, unit: 'm' }]),
  ],
})
