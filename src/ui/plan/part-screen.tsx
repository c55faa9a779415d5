import { useState } from 'preact/hooks'
import { copyMachine } from '../../plan/copy-machine.ts'
import { withCount } from '../../plan/counted.ts'
import { without, type ListName } from '../../plan/without.ts'
import type { WrittenCheck, WrittenMachine, WrittenPlan } from '../../plan/written-plan.ts'
import { useApp, useWords } from '../app-context.ts'
import { Banner, Empty } from '../parts/banner.tsx'
import { Button } from '../parts/button.tsx'
import { Card } from '../parts/card.tsx'
import { Field } from '../parts/field.tsx'
import { HoldToConfirm } from '../parts/hold-to-confirm.tsx'
import { Sheet } from '../parts/sheet.tsx'
import { StockCard } from '../stock/stock-card.tsx'
import { useDates } from '../use-dates.ts'
import { AddPart } from './add-part.tsx'
import type { PartFields } from './field.ts'
import { valueAt, withValue } from './at.ts'
import { PartForm } from './form.tsx'
import { moved, OrderedRows, type Ordered } from './ordered-rows.tsx'
import { PassphraseCard } from './passphrase-card.tsx'
import { partHref } from './place-of.ts'
import { PlanScreen } from './plan-screen.tsx'
import { pathOfPart, problemsOfPart } from './problems-of-part.ts'
import { checkFields, partFields } from './parts.ts'
import { ProposeCard } from './propose-card.tsx'
import { SetByCard } from './set-by-card.tsx'
import { setByText } from './set-by-text.ts'
import { StillOpen, useStillOpen } from './still-open.tsx'
import type { Draft } from './use-draft.ts'

/** One part of the plan: its fields, and for a machine or a station what stands in it. */
export const PartScreen = ({ list, id, isNew }: { list: ListName; id: string; isNew: boolean }) => {
  const { phone } = useApp()
  const all = useWords()
  const words = all.plan
  return (
    <PlanScreen
      draw={(draft) => {
        const { plan, parsed, mayEdit, change } = draft
        const path = pathOfPart(plan, list, id)
        const part = path && (valueAt(plan, path) as { name: string })
        if (!path || !part) return { title: words.lists[list].one, body: <Empty title={all.shell.notFound.title} /> }
        const check = list === 'checks' ? (part as WrittenCheck) : undefined
        const given = {
          value: part, plan, path, problems: parsed.ok ? [] : parsed.problems, checkUnit: check && 'unit' in check ? check.unit : list === 'materials' ? (part as WrittenMaterial).stock?.unit : undefined, readOnly: !mayEdit, patient: isNew,
          onChange: (at: typeof path, value: unknown) => {
            const next = withValue(plan, at, value)
            change(list === 'materials' ? { ...next, materials: next.materials.map((it) => (it.id === id ? withCount(plan.materials.find((old) => old.id === id), it, new Date(phone.clock.now()).toISOString()) : it)) } : next)
          },
        }
        return {
          title: part.name || words.lists[list].one,
          meta: metaOf(plan, list, id),
          body: (
            <>
              {check ? <SetByCard draft={draft} check={check} path={path} /> : null}
              <Card>
                <PartForm fields={list === 'checks' ? checkFields[check!.kind] : list === 'cautions' && !('addsTo' in part) ? aloneCaution : partFields[list]} {...given} />
                <p class="small quiet">{words.knownAs(id)}</p>
              </Card>
              {list === 'materials' ? <StockCard material={id} /> : null}
              {check?.kind === 'reading' ? <ProposeCard draft={draft} check={check} path={path} /> : null}
              {list === 'machines' ? <Stations draft={draft} machine={part as WrittenMachine} /> : null}
              {list === 'stations' ? <Checks draft={draft} station={id} /> : null}
              {list === 'people' ? <PassphraseCard person={id} /> : null}
              {mayEdit ? <Changes draft={draft} list={list} id={id} name={part.name} /> : null}
            </>
          ),
        }
      }}
    />
  )
}

/** A card that stands alone says what to wear and what first aid to give. */
const aloneCaution: PartFields = { ...partFields.cautions, wear: { ...partFields.cautions['wear']!, needed: true }, firstAid: { ...partFields.cautions['firstAid']!, needed: true } }

type WrittenMaterial = WrittenPlan['materials'][number]

const metaOf = (plan: WrittenPlan, list: ListName, id: string): string | undefined => {
  const stationOf = (station: string): string => plan.machines.flatMap((machine) => machine.stations.filter((it) => it.id === station).map((it) => `${machine.name} · ${it.name}`))[0] ?? ''
  if (list === 'stations') return plan.machines.find(({ stations }) => stations.some((it) => it.id === id))?.name
  return list === 'checks' ? stationOf(plan.checks.find((it) => it.id === id)?.station ?? '') : undefined
}

const mendMark = (draft: Draft, list: ListName, id: string, says: (count: number) => string): preact.ComponentChildren => {
  const count = draft.parsed.ok ? 0 : problemsOfPart(draft.parsed.problems, draft.plan, list, id).length
  return count ? <span class="small mend">{says(count)}</span> : undefined
}

const Stations = ({ draft, machine }: { draft: Draft; machine: WrittenMachine }) => {
  const words = useWords().plan
  const { plan, mayEdit, change } = draft
  const rows: Ordered[] = machine.stations.map(({ id, name }) => ({
    id, name, href: partHref('stations', id), under: words.counts.checks(plan.checks.filter(({ station }) => station === id).length), value: mendMark(draft, 'stations', id, words.toMend),
  }))
  return (
    <Card title={words.lists.stations.title}>
      {rows.length ? (
        <OrderedRows rows={rows} label={words.lists.stations.title} onMove={mayEdit ? (from, to) => change({ ...plan, machines: plan.machines.map((it) => (it.id === machine.id ? { ...it, stations: moved(it.stations, from, to) } : it)) }) : undefined} />
      ) : <Empty title={words.lists.stations.none} />}
      <AddPart draft={draft} list="stations" under={machine.id} />
    </Card>
  )
}

const Checks = ({ draft, station }: { draft: Draft; station: string }) => {
  const words = useWords()
  const { date } = useDates()
  const say = words.plan
  const { plan, mayEdit, change } = draft
  const own = plan.checks.filter((it) => it.station === station)
  const rows: Ordered[] = own.map((check) => ({
    id: check.id, name: check.name, href: partHref('checks', check.id), under: setByText(plan, check, words, date), value: mendMark(draft, 'checks', check.id, say.toMend),
  }))
  const move = (from: number, to: number): void => {
    const order = moved(own, from, to)
    let next = 0
    // Checks of other stations keep their places in the list.
    change({ ...plan, checks: plan.checks.map((check) => (check.station === station ? order[next++]! : check)) })
  }
  return (
    <Card title={say.lists.checks.title}>
      {rows.length ? <OrderedRows rows={rows} label={say.lists.checks.title} onMove={mayEdit ? move : undefined} /> : <Empty title={say.lists.checks.none} />}
      <AddPart draft={draft} list="checks" under={station} />
    </Card>
  )
}

const Changes = ({ draft, list, id, name }: { draft: Draft; list: ListName; id: string; name: string }) => {
  const { router } = useApp()
  const all = useWords()
  const words = all.plan
  const [asked, setAsked] = useState<'copy' | 'remove'>()
  const [copyName, setCopyName] = useState(words.copyOf(name))
  const copy = (): void => {
    if (!copyName.trim()) return
    const { plan, machine } = copyMachine(draft.plan, id, copyName.trim())
    draft.change(plan)
    router.go(partHref('machines', machine))
  }
  const remove = (): void => {
    draft.change(without(draft.plan, list, id))
    router.back()
  }
  return (
    <>
      {list === 'machines' ? <Button wide onPress={() => setAsked('copy')}>{words.copy}</Button> : null}
      <Button kind="stop" wide onPress={() => setAsked('remove')}>{words.remove(name)}</Button>
      {asked === 'copy' ? (
        <Sheet title={words.copy} closeName={all.shell.close} onClose={() => setAsked(undefined)}>
          <p>{words.copyMore}</p>
          <Field name={words.copyName} value={copyName} onChange={setCopyName} />
          <Button kind="go" notYet={copyName.trim() ? undefined : all.enrol.needed} onPress={copy}>{words.copy}</Button>
        </Sheet>
      ) : null}
      {asked === 'remove' ? (
        <Sheet title={words.remove(name)} closeName={all.shell.close} onClose={() => setAsked(undefined)}>
          <AskRemove changed={without(draft.plan, list, id)} name={name} onConfirm={remove} />
        </Sheet>
      ) : null}
    </>
  )
}

/** What is still open on a part is named before it is taken out: closed or released first, it leaves nothing behind. */
const AskRemove = ({ changed, name, onConfirm }: { changed: WrittenPlan; name: string; onConfirm(): void }) => {
  const words = useWords().plan
  const rows = useStillOpen(changed)
  return (
    <>
      <StillOpen rows={rows} isRefused={rows.length > 0} />
      <Banner kind="warn" title={words.removeMore} />
      {rows.length ? null : <HoldToConfirm done={false} hint={words.removeHold} onConfirm={onConfirm}>{words.remove(name)}</HoldToConfirm>}
    </>
  )
}
