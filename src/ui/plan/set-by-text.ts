import type { WrittenCheck, WrittenPlan } from '../../plan/written-plan.ts'
import type { Words } from '../words/words.ts'

/** Who set an aim and when; a starting value with where it comes from. */
export const setByText = (plan: WrittenPlan, { setBy }: WrittenCheck, words: Words, date: (time: number) => string): string => {
  if (setBy.kind === 'startingValue') return words.plan.startingValue(setBy.source)
  const at = Date.parse(setBy.at)
  const who = plan.people.find(({ id }) => id === setBy.person)?.name ?? setBy.person
  return words.plan.setBy(who, Number.isFinite(at) ? date(at) : setBy.at)
}
