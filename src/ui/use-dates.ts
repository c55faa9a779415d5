import { useApp } from './app-context.ts'
import { dateText, longDateText, timeText } from './format.ts'

/** Days and times as the person's language writes them, in the time zone of the laboratory. */
export const useDates = (ofPlan?: string) => {
  const { language, plan } = useApp()
  const timeZone = ofPlan ?? plan.value?.plan.timeZone ?? 'UTC'
  const date = (time: number): string => dateText(time, timeZone, language.value)
  return {
    date,
    longDate: (time: number): string => longDateText(time, timeZone, language.value),
    when: (time: number): string => `${date(time)} ${timeText(time, timeZone)}`,
  }
}
