import { checkOf } from '../../plan/find.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import type { Machine } from '../../plan/machine.ts'
import { pairFindings } from '../../projections/pairs.ts'
import { useApp, useWords } from '../app-context.ts'
import { Row } from '../parts/card.tsx'

/** One line for each pair of this machine about which there is something to say; its place has the rest. */
export const PairRows = ({ machine, plan }: { machine: Machine; plan: LabPlan }) => {
  const { lab, now } = useApp()
  const words = useWords().pairs
  const found = pairFindings(lab.value.state, plan, now.value).flatMap((it) => {
    const check = checkOf(plan, it.check)
    return machine.stations.some(({ id }) => id === check.station) ? [{ ...it, name: check.name, station: check.station }] : []
  })
  return <>{found.map((it) => <Row key={`${it.check} ${it.other}`} href={`/station/${it.station}`} what={it.name} under={words.says[it.code]} />)}</>
}
