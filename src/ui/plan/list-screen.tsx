import type { ListName } from '../../plan/without.ts'
import type { WrittenPlan } from '../../plan/written-plan.ts'
import { useWords } from '../app-context.ts'
import { Empty } from '../parts/banner.tsx'
import { Card } from '../parts/card.tsx'
import { StockValue } from '../stock/stock-card.tsx'
import { useStocks } from '../stock/use-stocks.ts'
import type { Words } from '../words/words.ts'
import { AddPart } from './add-part.tsx'
import { moved, OrderedRows } from './ordered-rows.tsx'
import { partHref } from './place-of.ts'
import { PlanScreen } from './plan-screen.tsx'
import { problemsOfPart } from './problems-of-part.ts'
import { optionsOf, unbroken } from './sources.ts'

type Flat = Exclude<ListName, 'machines' | 'stations' | 'checks'>

/** People, shifts, materials, methods, formulas or cautions of the plan. */
export const ListScreen = ({ list }: { list: Flat }) => {
  const words = useWords()
  const say = words.plan
  const stocks = useStocks(list === 'materials')
  return (
    <PlanScreen
      draw={(draft) => {
        const { plan, parsed, mayEdit } = draft
        const entries: readonly { id: string; name: string }[] = plan[list] ?? []
        return {
          title: say.lists[list].title,
          body: (
            <Card>
              {entries.length ? (
                <OrderedRows
                  label={say.lists[list].title}
                  rows={entries.map(({ id, name }) => {
                    const count = parsed.ok ? 0 : problemsOfPart(parsed.problems, plan, list, id).length
                    return { id, name, under: underOf(plan, list, id, words), value: count ? <span class="small mend">{say.toMend(count)}</span> : list === 'materials' && stocks.get(id) ? <StockValue stock={stocks.get(id)!} /> : undefined, href: partHref(list, id) }
                  })}
                  onMove={mayEdit ? (from, to) => draft.change({ ...plan, [list]: moved(entries, from, to) }) : undefined}
                />
              ) : <Empty title={say.lists[list].none}>{list === 'cautions' ? say.cautionsMore : undefined}</Empty>}
              <AddPart draft={draft} list={list} />
            </Card>
          ),
        }
      }}
    />
  )
}

const underOf = (plan: WrittenPlan, list: Flat, id: string, words: Words): string | undefined => {
  const say = words.plan
  switch (list) {
    case 'people':
      return say.choice('role', plan.people.find((it) => it.id === id)?.role ?? '')
    case 'shifts': {
      const shift = plan.shifts.find((it) => it.id === id)
      return `${shift?.from ?? ''} – ${shift?.to ?? ''}`
    }
    case 'materials': {
      const into: readonly string[] = plan.materials.find((it) => it.id === id)?.for ?? []
      const ofMachines = plan.machines.map(({ name, stations }) => [plan.machines.length > 1 ? name : '', stations.filter((it) => into.includes(it.id)).map((it) => it.name).join(', ')] as const)
      return unbroken(ofMachines.filter(([, names]) => names).map((said) => said.filter(Boolean).join(': ')).join(' · '))
    }
    case 'cautions':
      return optionsOf(plan, 'builtInCards').find((it) => it.value === plan.cautions?.find((card) => card.id === id)?.addsTo)?.says
    default:
      return undefined
  }
}
