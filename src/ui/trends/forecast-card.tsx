import type { Forecast } from '../../projections/forecast.ts'
import { useApp, useWords } from '../app-context.ts'
import { Card } from '../parts/card.tsx'
import { useDates } from '../use-dates.ts'

export const ForecastCard = ({ forecast, text }: { forecast: Forecast | undefined; text(value: number): string }) => {
  const { plan, phone } = useApp()
  const words = useWords().trends.forecast
  const { timeZone } = plan.value!.plan
  const { when } = useDates(timeZone)
  return (
    <Card title={words.title}>
      {forecast ? (
        <>
          <p><strong>{words.meets[forecast.meets](text(forecast.limit), `${words.in(words.hours(Math.max(0, forecast.at - phone.clock.now()) / 3_600_000))}, ${when(forecast.at)}`)}</strong></p>
          <p class="small quiet">{words.interval(when(forecast.earliest), when(forecast.latest), forecast.points)}</p>
        </>
      ) : (
        <p class="quiet">{words.none}</p>
      )}
    </Card>
  )
}
