import { useState } from 'preact/hooks'
import { placeOf } from '../../plan/find.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import type { LineOf } from '../../projections/line.ts'
import { wasteDrums } from '../../safety/waste.ts'
import { useApp, useWords } from '../app-context.ts'
import { decimalsOf, numberText, timeText } from '../format.ts'
import { Empty } from '../parts/banner.tsx'
import { LinkButton } from '../parts/button.tsx'
import { Card, Row, Rows } from '../parts/card.tsx'
import { VerdictMark } from '../parts/verdict-mark.tsx'
import { Deferral } from '../safety/deferral.tsx'
import { Screen } from '../screen.tsx'
import { shortText } from '../units.ts'
import { useDates } from '../use-dates.ts'
import { DrumSheet } from './drum-sheet.tsx'
import { RunOffScreen } from './run-off-screen.tsx'

const shownRunOffs = 12

/** What leaves the laboratory: the drain against its permit, the drums, what ran off lately. `/waste/new` logs a run-off. */
export const WasteScreen = () => {
  const { plan, router } = useApp()
  const words = useWords()
  const inForce = plan.value?.plan
  if (!inForce) return <Screen title={words.waste.title} back><Empty title={words.now.noPlan.title} /></Screen>
  return router.here.value.rest[0] === 'new' ? <RunOffScreen plan={inForce} /> : <Overview plan={inForce} />
}

const Overview = ({ plan }: { plan: LabPlan }) => {
  const { lab } = useApp()
  const words = useWords()
  const say = words.waste
  const [drum, setDrum] = useState<string>()
  const { state, ledger } = lab.value
  const permit = plan.checks.filter((check) => placeOf(plan, check.station).station.kind === 'effluent')
  const runOffs = ledger.lines.filter((line): line is LineOf<'runOff'> => line.kind === 'runOff' && !line.withdrawnBy).slice(-shownRunOffs).reverse()
  const { when } = useDates(plan.timeZone)
  return (
    <Screen title={say.title} back next={<LinkButton kind="go" href="/waste/new">{say.log}</LinkButton>}>
      <Card title={say.permit}>
        {permit.length ? (
          <Rows>
            {permit.map((check) => {
              const last = state.checks[check.id]?.recent.at(-1)
              const value = last?.value !== undefined && check.kind === 'reading' ? `${last.keyed ?? numberText(last.value, decimalsOf(check.step))} ${check.unit === 'pH' ? '' : check.unit}`.trim() : undefined
              return (
                <Row
                  key={check.id}
                  href={`/check/${check.id}`}
                  what={<>{check.name} {value ? <strong>{value}</strong> : null}</>}
                  under={last ? words.now.stationScreen.last(timeText(last.time, plan.timeZone)) : words.now.stationScreen.never}
                  value={last ? <VerdictMark verdict={last.verdict} /> : undefined}
                />
              )
            })}
          </Rows>
        ) : (
          <Empty title={say.noPermit}>{say.noPermitMore}</Empty>
        )}
        <p class="small quiet">{say.permitMore}</p>
      </Card>
      <Card title={say.drumsTitle}>
        <Rows>
          {wasteDrums.map(({ id, says }) => {
            const it = state.drums[id]
            const litres = Object.values(it?.litres ?? {}).reduce((sum, each) => sum + each, 0)
            return <Row key={id} what={<strong>{say.drums[id]}</strong>} under={words.safety.say(says)} value={it ? `${shortText(litres, 1)} L` : say.empty} {...(it ? { onPress: () => setDrum(id) } : {})} />
          })}
        </Rows>
      </Card>
      <Card title={say.lately}>
        {runOffs.length ? (
          <Rows>
            {runOffs.map(({ id, time, data }) => (
              <Row
                key={id}
                what={say.kinds[data.waste] ?? data.waste}
                under={`${when(time)} · ${data.destination.to === 'drum' ? (say.drums[data.destination.drum] ?? data.destination.drum) : say.to[data.destination.to]}`}
                value={`${shortText(data.litres, 2)} L`}
              />
            ))}
          </Rows>
        ) : (
          <p>{say.none}</p>
        )}
      </Card>
      <Deferral />
      {drum ? <DrumSheet plan={plan} drum={drum} onClose={() => setDrum(undefined)} /> : null}
    </Screen>
  )
}
