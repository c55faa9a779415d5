import type { LabPlan } from '../../plan/lab-plan.ts'
import type { Ledger } from '../../projections/ledger.ts'
import type { ShiftPage } from '../../projections/shift-page.ts'
import type { RunOffTotal } from '../../projections/shift-waste.ts'
import type { EntryId } from '../../record/ids.ts'
import { useWords } from '../app-context.ts'
import { timeText } from '../format.ts'
import { Card, Row, Rows } from '../parts/card.tsx'
import { VerdictMark } from '../parts/verdict-mark.tsx'
import { shortText } from '../units.ts'
import { checkName, personName } from './line-text.ts'

export const hasWaste = ({ waste: { effluent, runOffs, drumsOut, notes } }: ShiftPage): boolean => effluent.length + runOffs.length + drumsOut.length + notes.length > 0

/** What went to the drain and what was read there, what ran off and where to, which drums left. */
export const WasteCard = ({ plan, page, ledger, onEvidence }: { plan: LabPlan; page: ShiftPage; ledger: Ledger; onEvidence(id: EntryId): void }) => {
  const all = useWords()
  const words = all.shift.waste
  const { runOffs, drumsOut, effluent, notes } = page.waste
  const clock = (time: number): string => timeText(time, plan.timeZone)
  const whither = ({ destination }: RunOffTotal): string => (destination.to === 'drum' ? (all.waste.drums[destination.drum] ?? destination.drum) : all.waste.to[destination.to])
  if (!hasWaste(page)) return null
  return (
    <Card title={words.title}>
      {runOffs.map((total) => (
        <section key={JSON.stringify([total.waste, total.destination])} class="total">
          <h3 class="spread">
            <span>{all.waste.kinds[total.waste] ?? total.waste}</span>
            <strong>{shortText(total.litres, 2)} L</strong>
          </h3>
          <p class="small quiet">{whither(total)}</p>
          <Rows>
            {total.entries.map((id) => {
              const line = ledger.line(id)
              return line?.kind === 'runOff' ? (
                <Row key={id} what={`${clock(line.time)} · ${shortText(line.data.litres, 2)} L`} under={[personName(plan, line.person), line.data.remark].filter(Boolean).join(' · ')} onPress={() => onEvidence(id)} />
              ) : null
            })}
          </Rows>
        </section>
      ))}
      {effluent.length + drumsOut.length + notes.length ? (
        <Rows>
          {effluent.map(({ id, time, check, keyed, unit, verdict }) => (
            <Row key={id} what={`${checkName(plan, check)} ${keyed} ${unit === 'pH' || unit === '1' ? '' : unit}`.trim()} under={clock(time)} value={<VerdictMark verdict={verdict} />} onPress={() => onEvidence(id)} />
          ))}
          {drumsOut.map(({ id, time, person, data }) => (
            <Row key={id} what={`${all.shift.entry.kinds.drumOut}: ${all.waste.drums[data.drum] ?? data.drum}`} under={[clock(time), personName(plan, person), data.to].filter(Boolean).join(' · ')} onPress={() => onEvidence(id)} />
          ))}
          {notes.map(({ id, time, person, data }) => <Row key={id} what={data.text} under={[clock(time), personName(plan, person)].filter(Boolean).join(' · ')} onPress={() => onEvidence(id)} />)}
        </Rows>
      ) : null}
    </Card>
  )
}
