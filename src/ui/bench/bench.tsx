import { useState } from 'preact/hooks'
import { calculationById, catalogue } from '../../science/catalogue.ts'
import { useApp, useWords } from '../app-context.ts'
import { Empty } from '../parts/banner.tsx'
import { Card, Row, Rows } from '../parts/card.tsx'
import { Field } from '../parts/field.tsx'
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
      <Field name={words.find} value={find} onChange={setFind} />
      {found.length === 0 ? <Empty title={words.nothingFound.title}>{words.nothingFound.more}</Empty> : null}
      {[...groups].map(([prefix, entries]) => (
        <Card key={prefix} title={words.groups[prefix] ?? prefix}>
          <Rows>
            {entries.map((it) => <Row key={it.id} what={it.title} href={`/bench/${it.id}`} />)}
          </Rows>
        </Card>
      ))}
    </Screen>
  )
}

const prefixOf = (id: string): string => id.split('.')[0]!
