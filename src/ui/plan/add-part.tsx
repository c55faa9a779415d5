import { useState } from 'preact/hooks'
import type { ListName } from '../../plan/without.ts'
import type { WrittenCheck } from '../../plan/written-plan.ts'
import { useApp, useWords } from '../app-context.ts'
import { Button } from '../parts/button.tsx'
import { Choices, Field } from '../parts/field.tsx'
import { Sheet } from '../parts/sheet.tsx'
import { withFreshPart } from './fresh-part.ts'
import { partHref } from './place-of.ts'
import type { Draft } from './use-draft.ts'

/** Asks for the name first: the id comes of it. */
export const AddPart = ({ draft, list, under }: { draft: Draft; list: ListName; under?: string }) => {
  const { router, person, phone } = useApp()
  const all = useWords()
  const words = all.plan
  const [isOpen, setOpen] = useState(false)
  const [name, setName] = useState('')
  const [kind, setKind] = useState<WrittenCheck['kind']>('reading')
  if (!draft.mayEdit) return null
  const add = (): void => {
    if (!name.trim() || person.value === null) return
    const { plan, id } = withFreshPart(draft.plan, list, { name: name.trim(), by: { person: person.value, at: new Date(phone.clock.now()).toISOString() }, under, check: kind })
    draft.change(plan)
    router.go(`${partHref(list, id)}/new`)
  }
  return (
    <>
      <Button wide onPress={() => setOpen(true)}>{words.lists[list].add}</Button>
      {isOpen ? (
        <Sheet title={words.lists[list].add} closeName={all.shell.close} onClose={() => setOpen(false)}>
          {list === 'checks' ? (
            <Choices<WrittenCheck['kind']>
              name={words.lists.checks.add} value={kind} onChange={setKind}
              of={(['reading', 'look', 'strip'] as const).map((it) => ({ value: it, says: <>{words.checkKinds[it]}<span class="small quiet" style={{ display: 'block' }}>{words.checkKindsMore[it]}</span></> }))}
            />
          ) : null}
          <Field name={words.nameOf('checkName')} value={name} onChange={setName} />
          <Button kind="go" notYet={name.trim() ? undefined : all.enrol.needed} onPress={add}>{words.lists[list].add}</Button>
        </Sheet>
      ) : null}
    </>
  )
}
