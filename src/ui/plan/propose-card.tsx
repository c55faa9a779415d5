import { useState } from 'preact/hooks'
import { personOf } from '../../plan/find.ts'
import type { CheckId } from '../../plan/ids.ts'
import type { Limits } from '../../plan/limits.ts'
import { enoughForProposal, fewestForProposal, proposeLimits } from '../../plan/propose-limits.ts'
import type { ReadingCheck } from '../../plan/check.ts'
import type { WrittenCheck } from '../../plan/written-plan.ts'
import { gapsOf, seriesOf, type SeriesPoint } from '../../projections/series.ts'
import { useApp, useWords } from '../app-context.ts'
import { decimalsOf, numberText } from '../format.ts'
import { Banner } from '../parts/banner.tsx'
import { Button } from '../parts/button.tsx'
import { Card } from '../parts/card.tsx'
import { Choices } from '../parts/field.tsx'
import { withValue, type Path } from './at.ts'
import type { Draft } from './use-draft.ts'

const counts = [20, 50, 100] as const
const sides = ['actionLow', 'warningLow', 'aim', 'warningHigh', 'actionHigh'] as const

/** Limits out of what the process did lately, for the supervisor to put into the draft or not. */
export const ProposeCard = ({ draft, check, path }: { draft: Draft; check: Extract<WrittenCheck, { kind: 'reading' }>; path: Path }) => {
  const { lab, archive, plan: inForce, person } = useApp()
  const words = useWords()
  const say = words.plan.propose
  const [points, setPoints] = useState<readonly SeriesPoint[] | 'loading'>()
  const [count, setCount] = useState<number>(counts[0])
  const [about, setAbout] = useState<'mean' | 'aim'>('mean')
  const known = inForce.value?.plan.checks.find((it): it is ReadingCheck => it.id === check.id && it.kind === 'reading')
  if (!draft.mayEdit || !known) return null
  const load = async (): Promise<void> => {
    setPoints('loading')
    // What is older than a few days is in the store alone.
    const { log, ledger } = lab.value
    setPoints(seriesOf(log.linesBefore > 0 ? (await (await archive()).whole()).ledger : ledger, check.id as CheckId))
  }
  if (points === undefined) return <Button wide onPress={() => void load()}>{say.title}</Button>
  if (points === 'loading') return <p role="status">{say.loading}</p>
  const taken = points.slice(-count)
  const step = typeof check.step === 'number' && check.step > 0 ? check.step : known.step
  const now: Limits = typeof check.limits.aim === 'number' ? (check.limits as Limits) : known.limits
  const proposed = proposeLimits({ values: taken.map(({ value }) => value), gapsBefore: gapsOf(taken, known), step, now, about })
  const text = (value: number | undefined, more = 0): string => (value === undefined ? '–' : numberText(value, decimalsOf(step) + more))
  const take = (): void => {
    if (!proposed || person.value === null || !personOf(inForce.value!.plan, person.value)) return
    const why = say.taken(check.name, proposed.count)
    draft.change(withValue(draft.plan, [...path, 'limits'], proposed.limits), [draft.why, why].filter(Boolean).join('; '))
    setPoints(undefined)
  }
  return (
    <Card title={say.title}>
      <p class="small quiet">{say.more}</p>
      <Choices<string> name={say.last} value={String(count)} onChange={(it) => setCount(Number(it))} of={[...counts.filter((it) => it < points.length).map((it) => ({ value: String(it), says: String(it) })), { value: String(Math.max(points.length, counts[0])), says: say.all(points.length) }].filter((it, index, list) => list.findIndex((other) => other.value === it.value) === index)} />
      <Choices<'mean' | 'aim'> name={say.about} value={about} onChange={setAbout} of={[{ value: 'mean', says: `${say.about}: ${say.aboutMean}` }, { value: 'aim', says: `${say.about}: ${say.aboutAim}` }]} />
      {proposed ? (
        <>
          {proposed.count < enoughForProposal ? <Banner kind="warn" title={say.few(enoughForProposal)} /> : null}
          {proposed.beyond ? <Banner kind="warn" title={say.beyond(proposed.beyond)} /> : null}
          <table class="proposed">
            <thead><tr><th scope="col">{check.unit}</th><th scope="col">{say.now}</th><th scope="col">{say.proposed}</th></tr></thead>
            <tbody>
              {sides.map((side) => <tr key={side}><th scope="row">{words.plan.nameOf(side)}</th><td>{text(now[side])}</td><td>{text(proposed.limits[side])}</td></tr>)}
            </tbody>
          </table>
          <p class="small quiet">{say.working(proposed.count, text(proposed.mean, 1), text(proposed.sigma, 2))} {say.source}</p>
          <Button wide onPress={take}>{say.take}</Button>
        </>
      ) : <p>{taken.length < fewestForProposal ? say.tooFew(taken.length, fewestForProposal) : say.equal}</p>}
    </Card>
  )
}
