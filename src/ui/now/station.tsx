import { checkOf, placeOf } from '../../plan/find.ts'
import { answerableExceptions } from '../../projections/left-behind.ts'
import { useApp, useWords } from '../app-context.ts'
import { decimalsOf, numberText, timeText } from '../format.ts'
import { NotFound } from '../not-found.tsx'
import { Empty } from '../parts/banner.tsx'
import { Card, Row, Rows } from '../parts/card.tsx'
import { VerdictMark } from '../parts/verdict-mark.tsx'
import { Screen } from '../screen.tsx'
import { shortText } from '../units.ts'
import { dueText } from './due-text.ts'
import { ExceptionRow } from './exception-row.tsx'
import { PairCards } from './pair-cards.tsx'
import { useDue } from './use-due.ts'

/** One place: what is open there, its checks with when they were last done, and the bath. */
export const StationScreen = () => {
  const { lab, plan, now, router } = useApp()
  const inForce = plan.value?.plan
  const id = router.here.value.rest[0]
  const known = inForce?.machines.find((machine) => machine.stations.some((it) => it.id === id))
  if (!inForce || !known) return <NotFound back />
  return <Known plan={inForce} place={placeOf(inForce, id as never)} now={now.value} lab={lab.value.state} />
}

type Given = { plan: Parameters<typeof checkOf>[0]; place: ReturnType<typeof placeOf>; now: number; lab: ReturnType<typeof useApp>['lab']['value']['state'] }

const Known = ({ plan, place: { machine, station }, now, lab }: Given) => {
  const words = useWords()
  const due = useDue(machine)
  const open = answerableExceptions(lab, plan).filter((it) => it.station === station.id)
  const checks = plan.checks.filter((it) => it.station === station.id)
  return (
    <Screen title={station.name} back meta={machine.name}>
      <div class="columns">
        {open.length ? (
          <Card title={words.now.stationScreen.open}>
            <Rows>{open.map((it) => <ExceptionRow key={it.id} exception={it} plan={plan} />)}</Rows>
          </Card>
        ) : null}
        <PairCards plan={plan} of={checks.map((check) => check.id)} />
        <Card title={words.now.stationScreen.checks}>
          {checks.length ? (
            <Rows>
              {checks.map((check) => {
                const last = lab.checks[check.id]?.recent.at(-1)
                const next = due.find((it) => it.check.id === check.id)
                const when = last ? words.now.stationScreen.last(timeText(last.time, plan.timeZone)) : words.now.stationScreen.never
                return (
                  <Row
                    key={check.id}
                    href={`/check/${check.id}`}
                    what={check.name}
                    under={<>{when}{next ? <> · <span class={`due ${next.status}`}>{dueText(next, now, words)}</span></> : null}</>}
                    value={last ? <VerdictMark verdict={last.verdict} /> : undefined}
                  />
                )
              })}
            </Rows>
          ) : (
            <Empty title={words.now.stationScreen.none} />
          )}
        </Card>
        {station.bath ? (
          <Card title={words.now.stationScreen.bath}>
            <Rows>
              {plan.materials.some((it) => it.for.includes(station.id)) ? <Row what={words.response.link} href={`/response/${station.id}`} /> : null}
              <Row what={words.now.stationScreen.litres} value={`${shortText(station.bath.litres, 1)} L`} />
              <Row what={words.now.stationScreen.turnover} value={words.time.span((station.bath.litres / station.bath.circulationLitresPerMinute) * 60_000)} />
              {station.bath.constituents.map((it) => (
                <Row key={it.substance} what={words.corrections.substance(it.substance) ?? it.substance} value={`${numberText(it.gramsPerLitre, decimalsOf(it.gramsPerLitre))} g/L`} />
              ))}
            </Rows>
          </Card>
        ) : null}
      </div>
    </Screen>
  )
}
