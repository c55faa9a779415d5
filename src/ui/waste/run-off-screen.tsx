import { useState } from 'preact/hooks'
import type { StationId } from '../../plan/ids.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import type { StationKind } from '../../plan/machine.ts'
import { runOffKind, runOffKinds } from '../../safety/run-offs.ts'
import { useApp, useWords } from '../app-context.ts'
import { buzz } from '../buzz.ts'
import { Button } from '../parts/button.tsx'
import { Card, Row, Rows } from '../parts/card.tsx'
import { Choices, Field } from '../parts/field.tsx'
import { SavingProblem } from '../saving-problem.tsx'
import { useSaving } from '../saving.ts'
import { Screen } from '../screen.tsx'
import { keyOf, routesOf } from './routes-of.ts'

/** Places from which something runs off; titration waste comes from the bench, which is where instruments stand or chemicals are mixed. */
const sources: ReadonlySet<StationKind> = new Set<StationKind>(['developer', 'stop', 'rinse', 'fixing', 'wash', 'silverCell', 'replenisher', 'mixing', 'solvent', 'instruments'])

/** What, from where, how much, and where to: only routes that may be taken are offered; those that may not say why. */
export const RunOffScreen = ({ plan }: { plan: LabPlan }) => {
  const { lab, router } = useApp()
  const words = useWords()
  const say = words.waste
  const saving = useSaving()
  const [waste, setWaste] = useState<string>()
  const [station, setStation] = useState<string>()
  const [litres, setLitres] = useState('')
  const [to, setTo] = useState<string>()
  const [tried, setTried] = useState(false)
  const kind = waste === undefined ? undefined : runOffKind(waste)
  const { routes, refused } = kind ? routesOf(kind, lab.value.state.drums) : { routes: [], refused: [] }
  const chosen = routes.find((it) => keyOf(it) === to)
  const number = Number(litres.replace(',', '.'))
  const badLitres = !(number > 0 && number <= 100_000)
  const places = plan.machines.flatMap((machine) => machine.stations.filter((it) => sources.has(it.kind)).map((it) => ({ value: it.id as string, says: `${it.name} · ${machine.name}` })))
  const save = async (): Promise<void> => {
    setTried(true)
    if (!waste || !station || badLitres || !chosen) {
      buzz('refused')
      return
    }
    if (!(await saving.save('runOff', { station: station as StationId, waste, litres: number, destination: chosen }))) return
    buzz('saved')
    router.go('/waste', 'replace')
  }
  const problem = !tried ? undefined : !waste ? say.problems.what : !station ? say.problems.from : badLitres ? say.problems.litres : !chosen ? say.problems.to : undefined
  return (
    <Screen title={say.log} back next={<Button kind="go" notYet={saving.busy ? words.shell.loading : undefined} onPress={() => save()}>{say.save}</Button>}>
      <SavingProblem of={saving} />
      {problem ? <p class="problem" role="alert">{problem}</p> : null}
      {kind ? (
        <>
          <Card title={say.what}>
            <Rows><Row what={<strong>{say.kinds[kind.id]}</strong>} value={say.change} onPress={() => { setWaste(undefined); setTo(undefined) }} /></Rows>
          </Card>
          <h2>{say.whereTo}</h2>
          <Choices<string> name={say.whereTo} of={routes.map((it) => ({ value: keyOf(it), says: it.to === 'drum' ? say.drums[it.drum] : say.routes[it.to] }))} value={to} onChange={setTo} />
          {refused.length ? (
            <details>
              <summary>{say.never}</summary>
              <Rows>{refused.map(({ drum, why }) => <Row key={drum.id} what={say.drums[drum.id]} under={say.why[why]} />)}</Rows>
            </details>
          ) : null}
          <Field name={say.howMuch} unit="L" kind="decimal" value={litres} onChange={setLitres} problem={tried && badLitres ? say.problems.litres : undefined} />
          <h2>{say.from}</h2>
          <Choices<string> name={say.from} of={places} value={station} onChange={setStation} />
        </>
      ) : (
        <>
          <h2>{say.what}</h2>
          <Choices<string> name={say.what} of={runOffKinds.map(({ id }) => ({ value: id, says: say.kinds[id] }))} value={undefined} onChange={setWaste} />
        </>
      )}
    </Screen>
  )
}
