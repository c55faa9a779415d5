import { useState } from 'preact/hooks'
import type { LabPlan } from '../../plan/lab-plan.ts'
import type { ShiftSpan } from '../../plan/shift-time.ts'
import type { Ledger } from '../../projections/ledger.ts'
import type { EntryId } from '../../record/ids.ts'
import { useApp, useWords } from '../app-context.ts'
import { saveFile } from '../menu/save-file.ts'
import { Button, LinkButton } from '../parts/button.tsx'
import { Card } from '../parts/card.tsx'

/** The shift on paper, for a spreadsheet, and as a proof. */
export const FilesCard = ({ plan, span, ledger, late }: { plan: LabPlan; span: ShiftSpan; ledger: Ledger; late: readonly EntryId[] }) => {
  const { archive, now } = useApp()
  const words = useWords().shift.files
  const [busy, setBusy] = useState(false)
  const name = `shift-${span.date}-${span.shift.id}`
  const carry = async (as: 'csv' | 'json'): Promise<void> => {
    if (busy) return
    setBusy(true)
    try {
      const { shiftCsv, shiftProof } = await import('./shift-export.ts')
      const given = { ledger, plan, span, archive: await archive() }
      if (as === 'csv') saveFile(`${name}.csv`, await shiftCsv(given, new Set(late)), 'text/csv;charset=utf-8')
      else saveFile(`${name}.json`, await shiftProof(given, now.value))
    } finally {
      setBusy(false)
    }
  }
  return (
    <Card title={words.title}>
      <Button wide onPress={() => print()}>{words.print}</Button>
      <Button wide notYet={busy ? words.preparing : undefined} onPress={() => carry('csv')}>{words.csv}</Button>
      <p class="small quiet">{words.csvMore}</p>
      <Button wide notYet={busy ? words.preparing : undefined} onPress={() => carry('json')}>{words.json}</Button>
      <p class="small quiet">{words.jsonMore}</p>
      <LinkButton wide href="/record">{words.other}</LinkButton>
    </Card>
  )
}
