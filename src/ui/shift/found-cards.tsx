import type { LabPlan } from '../../plan/lab-plan.ts'
import { placeOf, checkOf } from '../../plan/find.ts'
import type { ShiftPage } from '../../projections/shift-page.ts'
import type { EntryId } from '../../record/ids.ts'
import { useWords } from '../app-context.ts'
import { timeText } from '../format.ts'
import { Card, Row, Rows } from '../parts/card.tsx'
import { VerdictMark } from '../parts/verdict-mark.tsx'
import { filmText, shortText } from '../units.ts'
import { checkName } from './line-text.ts'

interface Given {
  plan: LabPlan
  page: ShiftPage
  onEvidence(id: EntryId): void
}

/** What was out of limits, with its action, its re-check and the minutes it was open. */
export const ExceptionsCard = ({ plan, page }: Given) => {
  const all = useWords()
  const words = all.shift.exceptions
  return (
    <Card title={words.title} beside={page.exceptions.length || undefined}>
      {page.exceptions.length === 0 ? <p>{words.none}</p> : null}
      <Rows>
        {page.exceptions.map(({ exception: it, minutesOpen, filmAtRisk }) => (
          <Row
            key={it.id}
            what={`${placeOf(plan, it.station).station.name} · ${checkOf(plan, it.check).name} ${it.marks[0]?.keyed ?? ''}`}
            under={[
              timeText(it.openedAt, plan.timeZone), it.state === 'closed' ? words.closed[it.closedHow ?? 'byHand'] : '', words.minutes(all.time.span(minutesOpen * 60_000)), it.doses.length ? words.adds(it.doses.length) : '',
              filmAtRisk.metres > 0 ? `${filmText(filmAtRisk.metres, plan.units.length)} ${all.shift.holds.atRisk}` : '',
            ].filter(Boolean).join(' · ')}
            value={it.state === 'closed' ? undefined : <strong class="small">{words.open}</strong>}
            href={`/exception/${it.id}`}
          />
        ))}
      </Rows>
    </Card>
  )
}

export const HoldsCard = ({ plan, page, onEvidence }: Given) => {
  const words = useWords().shift.holds
  const all = useWords()
  return (
    <Card title={words.title} beside={page.holds.length || undefined}>
      {page.holds.length === 0 ? <p>{words.none}</p> : null}
      <Rows>
        {page.holds.map(({ hold, minutes }) => (
          <Row
            key={hold.id}
            what={`${plan.machines.find(({ id }) => id === hold.machine)?.name ?? hold.machine}: ${hold.reason}`}
            under={[timeText(hold.from, plan.timeZone), all.time.span(minutes * 60_000), hold.filmAtRiskMetres ? `${filmText(hold.filmAtRiskMetres, plan.units.length)} ${words.atRisk}` : ''].filter(Boolean).join(' · ')}
            value={<span class="small">{hold.released ? words.released(timeText(hold.released.at, plan.timeZone)) : words.standing}</span>}
            onPress={() => onEvidence(hold.id)}
          />
        ))}
      </Rows>
    </Card>
  )
}

export const StripsCard = ({ plan, page, onEvidence }: Given) => {
  const words = useWords().shift.strips
  const marks = useWords().marks
  return (
    <Card title={words.title} beside={page.strips.length || undefined}>
      {page.strips.length === 0 ? <p>{words.none}</p> : null}
      <Rows>
        {page.strips.map(({ id, time, data, exception }) => (
          <Row
            key={id}
            what={checkName(plan, data.check)}
            under={[timeText(time, plan.timeZone), ...Object.entries(data.figures).slice(0, 3).map(([name, value]) => `${marks.figure(name)} ${shortText(value, 2)}`), exception ? words.out : ''].filter(Boolean).join(' · ')}
            value={<VerdictMark verdict={data.verdict} />}
            onPress={() => onEvidence(id)}
          />
        ))}
      </Rows>
    </Card>
  )
}
