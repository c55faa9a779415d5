import { useState } from 'preact/hooks'
import type { EntryId } from '../../record/ids.ts'
import type { StationId } from '../../plan/ids.ts'
import type { RunOffKind } from '../../safety/run-offs.ts'
import { useApp, useWords } from '../app-context.ts'
import { buzz } from '../buzz.ts'
import { Button } from '../parts/button.tsx'
import { Choices, Field } from '../parts/field.tsx'
import { Sheet } from '../parts/sheet.tsx'
import { SavingProblem } from '../saving-problem.tsx'
import { useSaving } from '../saving.ts'
import { keyOf, routesOf } from './routes-of.ts'

interface RunOffSheetProps {
  kind: RunOffKind
  station: StationId
  exception: EntryId
  /** As it was worked out; what truly ran off is keyed. */
  litres: number
  onDone(): void
  onClose(): void
}

/** A bleed of a bath as it is logged: how much ran off, and where it went. */
export const RunOffSheet = ({ kind, station, exception, litres: planned, onDone, onClose }: RunOffSheetProps) => {
  const { lab } = useApp()
  const words = useWords()
  const say = words.waste
  const saving = useSaving()
  const [litres, setLitres] = useState(String(Number(planned.toPrecision(3))))
  const { routes } = routesOf(kind, lab.value.state.drums)
  const [to, setTo] = useState(routes.length === 1 ? keyOf(routes[0]!) : undefined)
  const [tried, setTried] = useState(false)
  const chosen = routes.find((it) => keyOf(it) === to)
  const number = Number(litres.replace(',', '.'))
  const badLitres = !(number > 0 && number <= 100_000)
  const save = async (): Promise<void> => {
    setTried(true)
    if (badLitres || !chosen) {
      buzz('refused')
      return
    }
    if (!(await saving.save('runOff', { station, waste: kind.id, litres: number, destination: chosen, exception }))) return
    buzz('saved')
    onDone()
  }
  return (
    <Sheet title={say.kinds[kind.id] ?? kind.id} closeName={words.shell.close} onClose={onClose}>
      <SavingProblem of={saving} />
      <Field name={say.howMuch} unit="L" kind="decimal" value={litres} onChange={setLitres} problem={tried && badLitres ? say.problems.litres : undefined} />
      <h3>{say.whereTo}</h3>
      {tried && !chosen ? <p class="problem" role="alert">{say.problems.to}</p> : null}
      <Choices<string> name={say.whereTo} of={routes.map((it) => ({ value: keyOf(it), says: it.to === 'drum' ? say.drums[it.drum] : say.routes[it.to] }))} value={to} onChange={setTo} />
      <p class="small quiet">{say.permitMore}</p>
      <Button kind="go" onPress={() => save()}>{say.save}</Button>
    </Sheet>
  )
}
