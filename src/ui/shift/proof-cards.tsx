import { useState } from 'preact/hooks'
import type { LabPlan } from '../../plan/lab-plan.ts'
import type { Ledger } from '../../projections/ledger.ts'
import type { ShiftPage } from '../../projections/shift-page.ts'
import type { EntryId } from '../../record/ids.ts'
import { cardOf } from '../../safety/own-cards.ts'
import { useWords } from '../app-context.ts'
import { timeText } from '../format.ts'
import { materialName } from '../material-name.ts'
import { Card, Row, Rows } from '../parts/card.tsx'
import { useDates } from '../use-dates.ts'
import { EntriesSheet } from './entries-sheet.tsx'
import { lineText, personName } from './line-text.ts'

interface Given {
  plan: LabPlan
  page: ShiftPage
  onEvidence(id: EntryId): void
}

export const CautionsCard = ({ plan, page, onEvidence }: Given) => {
  const all = useWords()
  const words = all.shift.cautions
  if (page.cautions.length === 0) return null
  return (
    <Card title={words.title} beside={page.cautions.length}>
      <Rows>
        {page.cautions.map(({ id, time, person, data }) => (
          <Row
            key={id}
            what={all.safety.say(cardOf(plan, data.card)?.name ?? '') || (data.material ? materialName(plan, data.material, all) : data.card)}
            under={[timeText(time, plan.timeZone), personName(plan, person)].filter(Boolean).join(' · ')}
            onPress={() => onEvidence(id)}
          />
        ))}
      </Rows>
    </Card>
  )
}

/** Every instrument that the plan proves, and how it stood when the shift ended. */
export const InstrumentsCard = ({ plan, page, onEvidence }: Given) => {
  const words = useWords().shift.instruments
  const { when } = useDates(plan.timeZone)
  return (
    <Card title={words.title}>
      {page.instruments.length === 0 ? <p>{words.none}</p> : null}
      <Rows>
        {page.instruments.map((it) => {
          const proof = it.proof
          return (
            <Row
              key={it.check}
              what={it.instrument}
              under={[proof ? words.last(when(proof.time)) : '', words.uses(it.readings)].filter(Boolean).join(' · ')}
              value={<span class="small">{words.states[it.state]}</span>}
              {...(proof ? { onPress: () => onEvidence(proof.id) } : {})}
            />
          )
        })}
      </Rows>
    </Card>
  )
}

/** What was amended or withdrawn, and what was keyed long after it was noted. */
export const ChangesCard = ({ plan, page, ledger, onEvidence }: Given & { ledger: Ledger }) => {
  const all = useWords()
  const words = all.shift.changes
  const [isLate, setLate] = useState(false)
  if (page.changes.length + page.lateEntries.length === 0) return null
  return (
    <Card title={words.title} beside={page.changes.length || undefined}>
      {page.lateEntries.length ? <Rows><Row what={<span class="small quiet">{words.keyedLate(page.lateEntries.length)}</span>} onPress={() => setLate(true)} /></Rows> : null}
      {isLate ? <EntriesSheet title={words.keyedLate(page.lateEntries.length)} plan={plan} ledger={ledger} of={page.lateEntries} onEvidence={onEvidence} onDone={() => setLate(false)} /> : null}
      <Rows>
        {page.changes.map((it) => {
          const changed = ledger.line(it.ref)
          return (
            <Row
              key={it.id}
              what={changed ? lineText(changed, plan, all) : all.shift.entry.kinds[it.kind]}
              under={[timeText(it.time, plan.timeZone), personName(plan, it.person), it.why].filter(Boolean).join(' · ')}
              onPress={() => onEvidence(changed ? it.ref : it.id)}
            />
          )
        })}
      </Rows>
    </Card>
  )
}
