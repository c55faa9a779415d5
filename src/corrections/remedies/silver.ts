import { silverCurrent } from '../../science/silver/current.ts'
import { silverLoad } from '../../science/silver/load.ts'
import { spanAt } from '../../projections/machines.ts'
import { lastMark } from '../lookup.ts'
import { givenFor, hasAll } from '../given-for.ts'
import type { Remedy } from '../remedy.ts'
import type { Builder, Row } from '../row.ts'
import { say } from '../say.ts'
import type { Situation } from '../situation.ts'
import { act, worked } from './act.ts'

/** Steps in which a cell current is changed, agitation up first. Common practice, no source. */
const stepShare = 0.1

const currentChecks = ({ plan }: Situation) =>
  plan.checks.filter((it) => it.kind === 'reading' && it.quantity === 'current' && plan.machines.some(({ stations }) => stations.some((station) => station.id === it.station && station.kind === 'silverCell')))

/**
 * Silver high: the cell first, its current raised step by step with the agitation up. Where the plan fixes coating and cathode, the current that
 * carries what the film brings is worked out, and a step never goes past it or past what would make sulfide.
 */
export const raiseCellCurrent: Builder = (situation, row) => changed(situation, row, 'up')

/** Sulfide at the cell: current down at once. */
export const cutCellCurrent: Builder = (situation, row) => changed(situation, row, 'down')

const changed = (situation: Situation, row: Row, way: 'up' | 'down'): Remedy[] => {
  const { lab, now } = situation
  const check = currentChecks(situation).at(0)
  const amperes = check && lastMark(lab, check, now)?.value
  const steady = way === 'up' ? steadyCurrent(situation) : undefined
  const step = amperes === undefined ? undefined : amperes * (way === 'up' ? 1 + stepShare : 1 - stepShare * 2)
  const to = step !== undefined && steady && steady.amperes > amperes! ? Math.min(step, steady.amperes) : step
  const wouldSulfide = way === 'up' && steady?.sulfidingWarning
  return [
    act(situation, row, {
      code: 'cellCurrent',
      says: say(way === 'up' ? 'raiseCellCurrent' : 'cutCellCurrent'),
      how: [say('agitationUpFirst'), say('cautionOfCell', { card: 'op-silver-cell' }), ...(way === 'up' ? [say('inSteps', { share: stepShare })] : [say('ventilate'), say('readSulfiteAndPh')])],
      ...(to !== undefined && !wouldSulfide ? { settings: [{ quantity: 'current' as const, from: amperes!, to, unit: 'A', ...(steady ? { working: steady.working } : {}) }] } : {}),
      ...(wouldSulfide
        ? { refused: { code: 'wouldMakeSulfide', facts: { amperesPerSquareMetre: steady.amperesPerSquareMetre }, doFirst: say('raiseFixingReplenishment'), source: 'US Navy Photography (Advanced) app. I' } }
        : {}),
      ...(steady || way === 'down' ? {} : { lacks: say('cellDataNotInPlan') }),
    }),
  ]
}

const steadyCurrent = ({ plan, lab, machine, now, value, check }: Situation) => {
  const load = givenFor(plan, silverLoad.id)
  const cell = givenFor(plan, silverCurrent.id)
  const metresPerMinute = spanAt(lab.machines[machine.id], now).metresPerMinute || machine.aimMetresPerMinute
  if (!hasAll(load, ['gramsPerSquareMetre', 'fractionToFixer']) || !hasAll(cell, ['efficiencyFraction', 'cathodeSquareMetres'])) return undefined
  const silver = worked(silverLoad, {
    gaugeMillimetres: machine.gaugeMillimetres, metres: metresPerMinute * 60, gramsPerSquareMetre: load.gramsPerSquareMetre, fractionToFixer: load.fractionToFixer,
  })
  if (!silver) return undefined
  const isSilver = check.kind === 'reading' && check.of === 'silver' && value !== undefined
  const current = worked(silverCurrent, {
    gramsPerHour: silver.result.grams, efficiencyFraction: cell.efficiencyFraction, cathodeSquareMetres: cell.cathodeSquareMetres,
    ...(isSilver ? { silverGramsPerLitre: value } : {}),
  })
  return current && { ...current.result, working: current.working }
}
