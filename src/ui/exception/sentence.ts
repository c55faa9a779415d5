import type { Facts, Say } from '../../corrections/say.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import { timeText } from '../format.ts'
import { materialName } from '../material-name.ts'
import { shortText } from '../units.ts'
import type { Sentence, Told } from '../words/en/corrections.ts'
import type { Words } from '../words/words.ts'

const instants = new Set(['until', 'foundAt'])

/** Facts as a person reads them: the names behind ids, times of day, printed numbers. */
const toldFacts = (facts: Facts, plan: LabPlan, words: Words): Told =>
  Object.fromEntries(Object.entries(facts).map(([name, value]) => [name, toldFact(name, value, plan, words)]))

const toldFact = (name: string, value: Facts[string], plan: LabPlan, words: Words): string => {
  if (typeof value === 'number') return instants.has(name) ? timeText(value, plan.timeZone) : shortText(value, 2)
  if (typeof value === 'boolean') return String(value)
  if (typeof value !== 'string') return value.map((it) => nameOf(it, words)).join(', ')
  if (name === 'check') return plan.checks.find(({ id }) => id === value)?.name ?? value
  if (name === 'material') return materialName(plan, value, words)
  if (name === 'station') return plan.machines.flatMap(({ stations }) => stations).find(({ id }) => id === value)?.name ?? value
  return nameOf(value, words)
}

const nameOf = (key: string, { corrections }: Words): string => corrections.substance(key) ?? key

/** The words of a working, with names where it was worked out by keys. */
export const namesIn = (text: string, plan: LabPlan, words: Words): string => text.replace(/[a-z][\w-]*/g, (key) => plan.materials.find(({ id }) => id === key)?.name ?? nameOf(key, words))

const told = (sentence: Sentence | undefined, code: string, facts: Facts, plan: LabPlan, words: Words): string =>
  sentence === undefined ? code : typeof sentence === 'string' ? sentence : sentence(toldFacts(facts, plan, words))

export const sayText = ({ code, facts }: Say, plan: LabPlan, words: Words): string => told(words.corrections.says[code], code, facts, plan, words)
export const refusalText = ({ code, facts }: { code: string; facts: Facts }, plan: LabPlan, words: Words): string => told(words.corrections.refusals[code], code, facts, plan, words)
