import { useState } from 'preact/hooks'
import type { StripCheck } from '../../plan/check.ts'
import { placeOf } from '../../plan/find.ts'
import { useApp, useWords } from '../app-context.ts'
import { NotFound } from '../not-found.tsx'
import { Empty } from '../parts/banner.tsx'
import { Button, LinkButton } from '../parts/button.tsx'
import { Card, Row, Rows } from '../parts/card.tsx'
import { VerdictMark } from '../parts/verdict-mark.tsx'
import { Screen } from '../screen.tsx'
import { useDates } from '../use-dates.ts'
import { BatchSheet } from './batch-sheet.tsx'
import { StripView } from './strip-view.tsx'

/** The strips of one machine: the last one drawn, the ones before, the batch in use. At `/strip/<check>`, one of them at `/strip/<check>/<entry>`. */
export const StripScreen = () => {
  const { router, plan } = useApp()
  const [id] = router.here.value.rest
  const check = plan.value?.plan.checks.find((it): it is StripCheck => it.id === id && it.kind === 'strip')
  return check ? <Known check={check} /> : <NotFound back />
}

const Known = ({ check }: { check: StripCheck }) => {
  const { router, lab, plan } = useApp()
  const words = useWords()
  const say = words.strip
  const [isTaking, setTaking] = useState(false)
  const { plan: inForce } = plan.value!
  const { station, machine } = placeOf(inForce, check.station)
  const strips = lab.value.state.strips[check.id]
  const recent = strips?.recent ?? []
  const wanted = router.here.value.rest[1] ?? recent.at(-1)?.id
  const line = wanted ? lab.value.ledger.line(wanted as never) : undefined
  const batch = strips?.batches.at(-1)
  const { when } = useDates(inForce.timeZone)
  return (
    <Screen title={check.name} back meta={`${machine.name} · ${station.name}`} next={<LinkButton kind="go" wide href={`/check/${check.id}`}>{say.read}</LinkButton>}>
      {line?.kind === 'strip' ? (
        <>
          <p class="verdict-line"><VerdictMark verdict={line.data.verdict} /> <strong>{when(line.time)}</strong></p>
          <StripView check={check} line={line} />
        </>
      ) : (
        <Empty title={say.noStrip.title}>{say.noStrip.more}</Empty>
      )}
      {check.steps ? null : <p class="small quiet">{say.noSteps}</p>}
      {recent.length > 1 ? (
        <Card title={say.recent}>
          <Rows>
            {recent.toReversed().map((it) => (
              <Row key={it.id} what={when(it.time)} under={it.batch ? say.batch(it.batch) : undefined} value={<VerdictMark verdict={it.verdict} />} href={`/strip/${check.id}/${it.id}`} />
            ))}
          </Rows>
        </Card>
      ) : null}
      {check.steps ? (
        <Card title={say.batches.title} beside={batch ? say.batches.since(when(batch.from)) : undefined}>
          {batch ? <p><strong>{batch.batch}</strong>{batch.crossover ? <span class="quiet"> · {say.batches.fromBatch(batch.crossover.from)}</span> : null}</p> : <p class="quiet">{say.noBatch}</p>}
          <Button onPress={() => setTaking(true)}>{say.batches.take}</Button>
        </Card>
      ) : null}
      {isTaking ? <BatchSheet check={check} onClose={() => setTaking(false)} /> : null}
    </Screen>
  )
}
