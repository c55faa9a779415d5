import type { LabPlan } from '../../plan/lab-plan.ts'
import type { ShiftPage } from '../../projections/shift-page.ts'
import type { EntryId } from '../../record/ids.ts'
import { useWords } from '../app-context.ts'
import { timeText } from '../format.ts'
import { Card, Row, Rows } from '../parts/card.tsx'
import { filmText } from '../units.ts'
import { personName } from './line-text.ts'

interface Given {
  plan: LabPlan
  page: ShiftPage
  onEvidence(id: EntryId): void
}

/** Machines that were held, why and how long, with the film at risk. */
export const HoldsCard = ({ plan, page, onEvidence }: Given) => {
  const words = useWords().shift.holds
  const all = useWords()
  if (page.holds.length === 0) return null
  return (
    <Card title={words.title} beside={page.holds.length}>
      <Rows>
        {page.holds.flatMap(({ hold, minutes }) => [
          <Row
            key={hold.id}
            what={`${plan.machines.find(({ id }) => id === hold.machine)?.name ?? hold.machine}: ${hold.reason}`}
            under={[timeText(hold.from, plan.timeZone), personName(plan, hold.by), all.time.span(minutes * 60_000), hold.filmAtRiskMetres ? `${filmText(hold.filmAtRiskMetres, plan.units.length)} ${words.atRisk}` : ''].filter(Boolean).join(' · ')}
            value={<span class="small">{hold.released ? words.released(timeText(hold.released.at, plan.timeZone)) : words.standing}</span>}
            onPress={() => onEvidence(hold.id)}
          />,
          ...(hold.released ? [<Row key={hold.released.id} what={<span class="small">{hold.released.reason}</span>} under={[words.released(timeText(hold.released.at, plan.timeZone)), personName(plan, hold.released.by)].filter(Boolean).join(' · ')} onPress={() => onEvidence(hold.released!.id)} />] : []),
        ])}
      </Rows>
    </Card>
  )
}
