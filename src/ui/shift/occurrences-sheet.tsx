import type { LabPlan } from '../../plan/lab-plan.ts'
import type { CoveredOccurrence } from '../../projections/coverage.ts'
import type { EntryId } from '../../record/ids.ts'
import { useWords } from '../app-context.ts'
import { timeText } from '../format.ts'
import { Row, Rows } from '../parts/card.tsx'
import { Sheet } from '../parts/sheet.tsx'
import { checkName, personName } from './line-text.ts'

/** The checks behind one number of the coverage, each with the entry that did or explained it. */
export const OccurrencesSheet = ({ title, plan, of, onEvidence, onDone }: { title: string; plan: LabPlan; of: readonly CoveredOccurrence[]; onEvidence(id: EntryId): void; onDone(): void }) => {
  const all = useWords()
  const clock = (time: number): string => timeText(time, plan.timeZone)
  return (
    <Sheet title={title} closeName={all.shell.close} onClose={onDone}>
      <Rows>
        {[...of].sort((a, b) => a.dueAt - b.dueAt).map((it) => (
          <Row
            key={`${it.check} ${it.dueAt}`}
            what={checkName(plan, it.check)}
            under={[
              all.shift.coverage.dueAt(clock(it.dueAt)), it.answeredAt === undefined ? '' : all.shift.coverage.doneAt(clock(it.answeredAt)), personName(plan, it.person ?? null),
              it.reason ? (all.round.skip.reasons[it.reason as keyof typeof all.round.skip.reasons] ?? it.reason) : '',
            ].filter(Boolean).join(' · ')}
            {...(it.entry ? { onPress: () => onEvidence(it.entry!) } : {})}
          />
        ))}
      </Rows>
    </Sheet>
  )
}
