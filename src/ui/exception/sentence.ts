import type { Facts, Say } from '../../corrections/say.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import { substances } from '../../science/substances-table.ts'
import { timeText } from '../format.ts'
import { shortText } from '../units.ts'
import type { Sentence, Told } from '../words/en/corrections.ts'
import type { Words } from '../words/words.ts'

const instants = new Set(['until', 'foundAt'])

/** Facts as a person reads them: the names behind ids, times of day, printed numbers. */
export const toldFacts = (facts: Facts, plan: LabPlan): Told =>
  Object.fromEntries(Object.entries(facts).map(([name, value]) => [name, toldFact(name, value, plan)]))

const toldFact = (name: string, value: Facts[string], plan: LabPlan): string => {
  if (typeof value === 'number') return instants.has(name) ? timeText(value, plan.timeZone) : shortText(value, 2)
  if (typeof value === 'boolean') return String(value)
  if (typeof value !== 'string') return value.map((it) => nameOf(it)).join(', ')
  if (name === 'check') return plan.checks.find(({ id }) => id === value)?.name ?? value
  if (name === 'material') return plan.materials.find(({ id }) => id === value)?.name ?? value
  if (name === 'station') return plan.machines.flatMap(({ stations }) => stations).find(({ id }) => id === value)?.name ?? value
  return nameOf(value)
}

const nameOf = (key: string): string => (key in substances ? substances[key as keyof typeof substances].name : key)

const told = (sentence: Sentence | undefined, code: string, facts: Facts, plan: LabPlan): string =>
  sentence === undefined ? code : typeof sentence === 'string' ? sentence : sentence(toldFacts(facts, plan))

export const sayText = ({ code, facts }: Say, plan: LabPlan, { corrections }: Words): string => told(corrections.says[code], code, facts, plan)
export const refusalText = ({ code, facts }: { code: string; facts: Facts }, plan: LabPlan, { corrections }: Words): string => told(corrections.refusals[code], code, facts, plan)
