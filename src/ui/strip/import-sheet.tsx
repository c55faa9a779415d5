import { useState } from 'preact/hooks'
import { densitiesOf, fieldsOfDensity, type DensityField } from '../../rounds/densities/cgats-densities.ts'
import { readCgats } from '../../rounds/densities/cgats-read.ts'
import { identifier, type CgatsProblem } from '../../rounds/densities/cgats-words.ts'
import { matchSteps, type Matched } from '../../rounds/densities/match-steps.ts'
import { readPasted, type PastedProblem } from '../../rounds/densities/pasted.ts'
import type { DensityRow } from '../../rounds/densities/row.ts'
import { useWords } from '../app-context.ts'
import { Banner } from '../parts/banner.tsx'
import { Button } from '../parts/button.tsx'
import { Choices, Field } from '../parts/field.tsx'
import { Sheet } from '../parts/sheet.tsx'

/** A strip is some thousand bytes; beyond this it is another file by mistake. */
const mostBytes = 1_000_000

interface ImportSheetProps {
  steps: readonly string[]
  onTake(byStep: Extract<Matched, { ok: true }>['byStep'], from: 'file' | 'pasted'): void
  onClose(): void
}

interface Choice {
  table: number
  field?: DensityField
  decimalComma: boolean
}

interface Taken {
  matched: Matched
  tables: { sets: number; fields: DensityField[] }[]
  isUnended: boolean
}
type Tried = Taken | { problem: CgatsProblem | PastedProblem | { code: 'noDensityField'; line: number } }

const tryText = (text: string, steps: readonly string[], { table, field, decimalComma }: Choice): Tried => {
  if (!identifier.test(text.replace(/^\uFEFF/, ''))) {
    const pasted = readPasted(text, { decimalComma })
    return pasted.ok ? { matched: matchSteps(pasted.rows, steps), tables: [], isUnended: false } : { problem: pasted.problem }
  }
  const read = readCgats(text.replace(/^\uFEFF/, ''))
  if (!read.ok) return { problem: read.problem }
  const { tables, notices } = read.file
  const chosen = tables[Math.min(table, tables.length - 1)]!
  const fields = fieldsOfDensity(chosen)
  const wanted = field && fields.includes(field) ? field : fields[0]
  if (!wanted) return { problem: { code: 'noDensityField', line: 1 } }
  const rows: DensityRow[] = densitiesOf(chosen, wanted, { decimalComma })
  return { matched: matchSteps(rows, steps), tables: tables.map((it) => ({ sets: it.sets.length, fields: fieldsOfDensity(it) })), isUnended: notices.length > 0 }
}

/** Densities out of a text: of the densitometer’s file, of a spreadsheet, of a message. What is doubtful is asked, what is wrong is named with its line. */
export const ImportSheet = ({ steps, onTake, onClose }: ImportSheetProps) => {
  const words = useWords()
  const say = words.strip.import
  const [text, setText] = useState('')
  const [from, setFrom] = useState<'file' | 'pasted'>('pasted')
  const [choice, setChoice] = useState<Choice>({ table: 0, decimalComma: false })
  const [isTooLarge, setTooLarge] = useState(false)
  const put = (next: string, source: 'file' | 'pasted'): void => {
    setText(next)
    setFrom(source)
    setChoice({ table: 0, decimalComma: false })
  }
  const open = async (file: File | undefined): Promise<void> => {
    if (!file) return
    setTooLarge(file.size > mostBytes)
    if (file.size <= mostBytes) put(await file.text(), 'file')
  }
  const tried = text.trim() ? tryText(text, steps, choice) : undefined
  const matched = tried && 'matched' in tried ? tried.matched : undefined
  const problem = tried && 'problem' in tried ? tried.problem : matched && !matched.ok ? matched.problem : undefined
  const { problems } = words.strip
  const tables = tried && 'matched' in tried ? tried.tables : []
  const fields = tables[Math.min(choice.table, tables.length - 1)]?.fields ?? []
  return (
    <Sheet title={say.title} closeName={words.shell.close} onClose={onClose}>
      <p class="small quiet">{say.hint}</p>
      <div class="field">
        <label>
          {say.file}
          <input type="file" accept=".txt,.csv,.cgats,.ti3,.tsv,text/*" onChange={(event) => void open(event.currentTarget.files?.[0])} />
        </label>
      </div>
      <Field name={say.label} kind="long" value={text} onChange={(next) => put(next, 'pasted')} />
      {isTooLarge ? <Banner kind="stop" title={say.tooLarge} /> : null}
      {tables.length > 1 ? (
        <Choices name={say.table} value={String(choice.table)} onChange={(at) => setChoice({ ...choice, table: Number(at) })} of={tables.map(({ sets }, index) => ({ value: String(index), says: say.tableName(index + 1, sets) }))} />
      ) : null}
      {fields.length > 1 ? <Choices name={say.field} value={choice.field ?? fields[0]} onChange={(field) => setChoice({ ...choice, field })} of={fields.map((value) => ({ value, says: value }))} /> : null}
      {problem?.code === 'decimalComma' ? (
        <>
          <Banner kind="warn" title={say.comma(problem.text, problem.as)} />
          <Button onPress={() => setChoice({ ...choice, decimalComma: true })}>{say.commaYes}</Button>
        </>
      ) : problem ? (
        <Banner kind="stop" title={(problems[problem.code as keyof typeof problems] as (it: unknown) => string)(problem)} />
      ) : null}
      {tried && 'matched' in tried && tried.isUnended && matched?.ok ? <Banner title={say.endDataMissing} /> : null}
      {matched?.ok ? (
        <>
          {matched.unused.length ? <p class="small">{say.unused(matched.unused.join(', '))}</p> : null}
          {matched.missing.length ? <p class="small">{words.strip.missing.more(matched.missing.join(', '))}</p> : null}
          <p>{say.done(Object.keys(matched.byStep).length)}</p>
          <Button kind="go" onPress={() => onTake(matched.byStep, from)}>{say.take}</Button>
        </>
      ) : null}
    </Sheet>
  )
}
