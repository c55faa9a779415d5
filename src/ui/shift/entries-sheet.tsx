import type { LabPlan } from '../../plan/lab-plan.ts'
import type { Ledger } from '../../projections/ledger.ts'
import type { EntryId } from '../../record/ids.ts'
import { useWords } from '../app-context.ts'
import { timeText } from '../format.ts'
import { Row, Rows } from '../parts/card.tsx'
import { Sheet } from '../parts/sheet.tsx'
import { lineText, personName } from './line-text.ts'

/** The entries behind a number, each with its own evidence. */
export const EntriesSheet = ({ title, plan, ledger, of, onEvidence, onDone }: { title: string; plan: LabPlan; ledger: Ledger; of: readonly EntryId[]; onEvidence(id: EntryId): void; onDone(): void }) => {
  const words = useWords()
  const lines = of.flatMap((id) => ledger.line(id) ?? []).sort((a, b) => a.time - b.time)
  return (
    <Sheet title={title} closeName={words.shell.close} onClose={onDone}>
      <Rows>
        {lines.map((line) => (
          <Row key={line.id} what={lineText(line, plan, words)} under={[timeText(line.time, plan.timeZone), personName(plan, line.person)].filter(Boolean).join(' · ')} onPress={() => onEvidence(line.id)} />
        ))}
      </Rows>
    </Sheet>
  )
}
