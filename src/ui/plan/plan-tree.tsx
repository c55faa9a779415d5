import { useApp, useWords } from '../app-context.ts'
import { problemsOfPart } from './problems-of-part.ts'
import { partHref } from './place-of.ts'
import type { Draft } from './use-draft.ts'

/** The whole plan as a list of links, at the desk: the machine that is open shows its stations, the station its checks. */
export const PlanTree = ({ draft }: { draft: Draft }) => {
  const { router } = useApp()
  const words = useWords().plan
  const path = router.here.value.path.replace(/\/new$/, '')
  const { plan, parsed } = draft
  const problems = parsed.ok ? [] : parsed.problems
  const link = (href: string, says: string, list?: Parameters<typeof problemsOfPart>[2], id?: string) => {
    const count = list ? problemsOfPart(problems, plan, list, id).length : 0
    return <a href={href} aria-current={decodeURIComponent(path) === decodeURIComponent(href) ? 'page' : undefined}><span>{says}</span>{count ? <span class="small mend">{words.toMend(count)}</span> : null}</a>
  }
  const isOpen = (href: string): boolean => decodeURIComponent(path) === decodeURIComponent(href)
  return (
    <nav class="plan-tree" aria-label={words.title}>
      <ul>
        <li>{link('/menu/plan', words.title)}</li>
        <li>{link(partHref('laboratory'), words.laboratory, 'laboratory')}</li>
        {plan.machines.map((machine) => {
          const href = partHref('machines', machine.id)
          const checks = plan.checks.filter(({ station }) => machine.stations.some(({ id }) => id === station))
          const machineOpen = isOpen(href) || machine.stations.some(({ id }) => isOpen(partHref('stations', id))) || checks.some(({ id }) => isOpen(partHref('checks', id)))
          return (
            <li key={machine.id}>
              {link(href, machine.name, 'machines', machine.id)}
              {machineOpen ? (
                <ul>
                  {machine.stations.map((station) => {
                    const own = checks.filter((check) => check.station === station.id)
                    const stationOpen = isOpen(partHref('stations', station.id)) || own.some(({ id }) => isOpen(partHref('checks', id)))
                    return (
                      <li key={station.id}>
                        {link(partHref('stations', station.id), station.name, 'stations', station.id)}
                        {stationOpen ? <ul>{own.map((check) => <li key={check.id}>{link(partHref('checks', check.id), check.name, 'checks', check.id)}</li>)}</ul> : null}
                      </li>
                    )
                  })}
                </ul>
              ) : null}
            </li>
          )
        })}
        {(['people', 'shifts', 'materials', 'methods', 'formulas', 'cautions'] as const).map((list) => <li key={list}>{link(partHref(list), words.lists[list].title, list)}</li>)}
      </ul>
    </nav>
  )
}
