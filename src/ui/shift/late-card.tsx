import { useState } from 'preact/hooks'
import { personOf } from '../../plan/find.ts'
import type { PersonId } from '../../plan/ids.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import type { Ledger } from '../../projections/ledger.ts'
import type { Signature } from '../../projections/shift-signatures.ts'
import type { EntryId } from '../../record/ids.ts'
import { countersignAbout } from '../../wire/presence.ts'
import { useApp, useWords } from '../app-context.ts'
import { timeText } from '../format.ts'
import { Button } from '../parts/button.tsx'
import { Card, Row, Rows } from '../parts/card.tsx'
import { Sheet } from '../parts/sheet.tsx'
import { SavingProblem } from '../saving-problem.tsx'
import { useSaving } from '../saving.ts'
import { useDates } from '../use-dates.ts'
import { lineText, personName } from './line-text.ts'
import { Prove, type Word } from './prove.tsx'

interface Given {
  plan: LabPlan
  ledger: Ledger
  signature: Signature
  onEvidence(id: EntryId): void
}

/** What came after the signature, apart from what it covers, and the countersign that it asks for. */
export const LateCard = ({ plan, ledger, signature, onEvidence }: Given) => {
  const { person, plan: inForce } = useApp()
  const all = useWords()
  const words = all.shift.late
  const [isOpen, setIsOpen] = useState(false)
  const { late, notCountersigned, ownNotCountersigned, own, countersigns } = signature
  const isSupervisor = person.value !== null && personOf(inForce.value?.plan ?? plan, person.value)?.role === 'supervisor'
  const ownToSee = person.value === signature.person ? [] : ownNotCountersigned
  const toSee = [...notCountersigned, ...ownToSee]
  if (late.length + own.length === 0) return null
  const { when } = useDates(plan.timeZone)
  return (
    <Card title={late.length ? words.title : words.countersign} beside={late.length || undefined}>
      {late.length ? <p class="small quiet">{words.more}</p> : null}
      <Rows>
        {late.map((id) => {
          const line = ledger.line(id)
          return line ? (
            <Row
              key={id}
              what={lineText(line, plan, all)}
              under={[timeText(line.time, plan.timeZone), personName(plan, line.person)].filter(Boolean).join(' · ')}
              value={notCountersigned.includes(id) ? undefined : <span class="small">{words.seen}</span>}
              onPress={() => onEvidence(id)}
            />
          ) : null
        })}
      </Rows>
      {countersigns.map((it) => <p key={it.id} class="small">{words.done(personName(plan, it.person), when(it.time))}{it.data.provisional ? ` (${words.provisional})` : ''}</p>)}
      {isSupervisor && person.value === signature.person && ownNotCountersigned.length ? <p class="small quiet">{words.yourOwn}</p> : null}
      {isSupervisor && toSee.length ? <Button kind="go" onPress={() => setIsOpen(true)}>{words.countersign}</Button> : null}
      {isOpen && person.value ? <CountersignSheet plan={plan} signature={signature} toSee={toSee} isOwn={ownToSee.length > 0} by={person.value} onDone={() => setIsOpen(false)} /> : null}
    </Card>
  )
}

const CountersignSheet = ({ plan, signature, toSee, isOwn, by, onDone }: { plan: LabPlan; signature: Signature; toSee: readonly EntryId[]; isOwn: boolean; by: PersonId; onDone(): void }) => {
  const { archive, phone, now } = useApp()
  const all = useWords()
  const { when } = useDates(plan.timeZone)
  const words = all.shift.late
  const saving = useSaving()
  // What is looked at now; what comes in while the passphrase is keyed asks for another.
  const [late] = useState(() => [...toSee])
  const about = { ref: signature.id, late }
  const save = async (word: Word): Promise<boolean> => {
    const id = await saving.save('countersign', { ...about, ...word })
    if (id) {
      phone.sendNow()
      onDone()
    }
    return id !== undefined
  }
  return (
    <Sheet title={words.countersign} closeName={all.shell.close} onClose={onDone}>
      <SavingProblem of={saving} />
      <Card>
        <p class="small quiet">{all.shift.sign.means}</p>
        {late.some((id) => signature.late.includes(id)) ? <p class="meaning">{words.meaning}</p> : null}
        {isOwn ? <p class="meaning">{words.meaningOwn}</p> : null}
        <p>{all.shift.sign.as(personName(plan, by), when(now.value))}</p>
        <p class="small quiet">{all.shift.sign.covers(late.length)}</p>
      </Card>
      <Prove by={by} name={words.countersign} isComplete={() => true} mayBeProvisional about={async () => (await archive()).sha256(countersignAbout(about))} onWord={save} />
    </Sheet>
  )
}
