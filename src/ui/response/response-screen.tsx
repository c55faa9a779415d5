import { useState } from 'preact/hooks'
import { responseBounds } from '../../corrections/answers.ts'
import { responseOf, unexplained } from '../../corrections/response.ts'
import { placeOf } from '../../plan/find.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import type { Material } from '../../plan/material.ts'
import type { Station } from '../../plan/machine.ts'
import { useApp, useWords } from '../app-context.ts'
import { numberText } from '../format.ts'
import { NotFound } from '../not-found.tsx'
import { Banner, Empty } from '../parts/banner.tsx'
import { Button } from '../parts/button.tsx'
import { Card, Row, Rows } from '../parts/card.tsx'
import { Screen } from '../screen.tsx'
import { useDates } from '../use-dates.ts'
import { ResetSheet } from './reset-sheet.tsx'
import '../exception/exception.css'

/** How a bath has answered what was poured into it: `/response/<station>`, or one material of it at `/response/<station>/<material>`. */
export const ResponseScreen = () => {
  const { plan, router } = useApp()
  const inForce = plan.value?.plan
  const [id, material] = router.here.value.rest
  const station = inForce?.machines.flatMap(({ stations }) => stations).find((it) => it.id === id)
  if (!inForce || !station?.bath) return <NotFound back />
  const materials = inForce.materials.filter((it) => it.for.includes(station.id) && (material === undefined || it.id === material))
  return <OfBath plan={inForce} station={station} materials={materials} />
}

const OfBath = ({ plan, station, materials }: { plan: LabPlan; station: Station; materials: readonly Material[] }) => {
  const { lab, phone } = useApp()
  const words = useWords()
  const say = words.response
  const { state } = lab.value
  const now = phone.clock.now()
  const poured = new Set(Object.values(state.exceptions.all).flatMap((it) => (it.station === station.id ? it.doses.map(({ material }) => material) : [])))
  const known = materials.map((material) => ({ material, response: responseOf(state, plan, { station: station.id, material: material.id, now, resets: state.resets }) })).filter(({ response, material }) => response.history.length > 0 || poured.has(material.id) || state.resets.some((it) => it.station === station.id && it.material === material.id))
  return (
    <Screen title={say.title} meta={`${station.name} · ${placeOf(plan, station.id).machine.name}`} back>
      <p>{say.more(numberText(responseBounds.least, 1), numberText(responseBounds.most, 1))}</p>
      {known.length === 0 ? <Empty title={say.none}>{say.noneMore}</Empty> : null}
      {known.map(({ material, response }) => <OfMaterial key={material.id} plan={plan} station={station} material={material} response={response} />)}
    </Screen>
  )
}

const OfMaterial = ({ plan, station, material, response }: { plan: LabPlan; station: Station; material: Material; response: ReturnType<typeof responseOf> }) => {
  const { lab, phone } = useApp()
  const words = useWords()
  const say = words.response
  const [resetting, setResetting] = useState(false)
  const { state } = lab.value
  const stopped = unexplained(state, plan, { station: station.id, material: material.id, now: phone.clock.now(), resets: state.resets })
  const resets = state.resets.filter((it) => it.station === station.id && (it.material === undefined || it.material === material.id))
  const { when } = useDates(plan.timeZone)
  const rows = [
    ...response.history.map((it) => ({
      at: it.readAt,
      row: <Row key={it.dose} what={say.kinds[it.kind]} under={[when(it.readAt), it.lot ?? '', say.change(numberText(it.predictedChange, 2), numberText(it.observedChange, 2))].filter(Boolean).join(' · ')} value={<strong>{numberText(it.ratio, 2)}</strong>} />,
    })),
    ...resets.map((it) => ({ at: it.at, row: <Row key={it.id} what={say.wasReset} under={`${when(it.at)} · ${it.why === 'newBath' ? say.newBath : it.why}`} value="1" /> })),
  ].sort((a, b) => b.at - a.at)
  return (
    <Card title={material.name} beside={response.lot}>
      <p class="amount"><strong>{numberText(response.factor, 2)}</strong></p>
      <p class="small quiet">{say.from(response.learnedFrom)}</p>
      {stopped ? <Banner kind="stop" title={say.stopped(numberText(stopped.ratio, 2))}>{say.stoppedMore}</Banner> : null}
      <Rows>{rows.map(({ row }) => row)}</Rows>
      <Button wide onPress={() => setResetting(true)}>{say.reset}</Button>
      {resetting ? <ResetSheet station={station.id} material={material.id} name={material.name} onClose={() => setResetting(false)} /> : null}
    </Card>
  )
}
