import { useState } from 'preact/hooks'
import { placeOf } from '../../plan/find.ts'
import { calculationById, catalogue } from '../../science/catalogue.ts'
import { useApp, useWords } from '../app-context.ts'
import { timeText } from '../format.ts'
import { Empty } from '../parts/banner.tsx'
import { Card, Row, Rows } from '../parts/card.tsx'
import { Field } from '../parts/field.tsx'
import { VerdictMark } from '../parts/verdict-mark.tsx'
import { Screen } from '../screen.tsx'
import { CalculationScreen } from './calculation-screen.tsx'
import './bench.css'

/** Every calculation, found by its words; one of them at `/bench/<id>`. */
export const Bench = () => {
  const { router } = useApp()
  const [id] = router.here.value.rest
  const calculation = id ? calculationById(id) : undefined
  return calculation ? <CalculationScreen calculation={calculation} /> : <BenchList />
}

const BenchList = () => {
  const words = useWords().bench
  const [find, setFind] = useState('')
  const wanted = find.toLowerCase().split(/\s+/).filter(Boolean)
  const found = catalogue.filter((it) => {
    const text = `${it.title} ${it.id} ${words.groups[prefixOf(it.id)] ?? ''}`.toLowerCase()
    return wanted.every((word) => text.includes(word))
  })
  const groups = Map.groupBy(found, (it) => prefixOf(it.id))
  return (
    <Screen title={words.title} meta={words.meta(catalogue.length)}>
      <div class="columns">
        {wanted.length === 0 ? <StripCards /> : null}
        <Card>
          <Rows>
            <Row what={<strong>{words.methods}</strong>} under={words.methodsMore} href="/method" />
            <Row what={<strong>{words.mixing}</strong>} under={words.mixingMore} href="/mixing" />
            <Row what={<strong>{words.silver}</strong>} under={words.silverMore} href="/silver" />
            <Row what={<strong>{words.replenish}</strong>} under={words.replenishMore} href="/replenish" />
            <Row what={<strong>{words.waste}</strong>} under={words.wasteMore} href="/waste" />
          </Rows>
        </Card>
      </div>
      <Field name={words.find} value={find} onChange={setFind} />
      {found.length === 0 ? <Empty title={words.nothingFound.title}>{words.nothingFound.more}</Empty> : null}
      <div class="columns">
        {[...groups].map(([prefix, entries]) => (
          <Card key={prefix} title={words.groups[prefix] ?? prefix}>
            <Rows>
              {entries.map((it) => <Row key={it.id} what={it.title} href={`/bench/${it.id}`} />)}
            </Rows>
          </Card>
        ))}
      </div>
    </Screen>
  )
}

/** The strips of each machine, with the verdict of the last one. */
const StripCards = () => {
  const { plan, lab } = useApp()
  const words = useWords()
  const inForce = plan.value?.plan
  const checks = inForce?.checks.filter((it) => it.kind === 'strip') ?? []
  if (!inForce || checks.length === 0) return null
  return (
    <Card title={words.strip.title}>
      <Rows>
        {checks.map((check) => {
          const last = lab.value.state.strips[check.id]?.recent.at(-1)
          return (
            <Row
              key={check.id}
              what={`${placeOf(inForce, check.station).machine.name} · ${check.name}`}
              under={last ? timeText(last.time, inForce.timeZone) : words.strip.noStrip.title}
              value={last ? <VerdictMark verdict={last.verdict} /> : undefined}
              href={`/strip/${check.id}`}
            />
          )
        })}
      </Rows>
    </Card>
  )
}

const prefixOf = (id: string): string => id.split('.')[0]!
