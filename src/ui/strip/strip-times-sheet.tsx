import type { Machine } from '../../plan/machine.ts'
import { stripInFor, stripTimes } from '../../rounds/strip/times.ts'
import { useApp, useWords } from '../app-context.ts'
import { timeText } from '../format.ts'
import { Button } from '../parts/button.tsx'
import { Choices } from '../parts/field.tsx'
import { Sheet } from '../parts/sheet.tsx'

interface StripTimesSheetProps {
  machine: Machine
  stripIn: number
  read: number
  batch: string | undefined
  batches: readonly string[]
  onChange(change: { stripIn?: number; batch?: string }): void
  onClose(): void
}

const steps = [-10, -1, 1, 10] as const
const minute = 60_000

/** Three times of one strip: in, the bath it speaks for, read; and the batch that it is of. */
export const StripTimesSheet = ({ machine, stripIn, read, batch, batches, onChange, onClose }: StripTimesSheetProps) => {
  const { lab } = useApp()
  const words = useWords()
  const run = lab.value.state.machines[machine.id]
  return (
    <Sheet title={words.strip.times.title} closeName={words.shell.close} onClose={onClose}>
      <TimesOfStrip machine={machine} stripIn={stripIn} read={read} />
      <div class="time-steps">
        {steps.map((by) => (
          <Button key={by} onPress={() => onChange({ stripIn: Math.min(read, stripIn + by * minute) })}>{words.strip.minutes(by)}</Button>
        ))}
      </div>
      <Button onPress={() => onChange({ stripIn: stripInFor(run, machine, read) })}>{words.strip.times.justOut}</Button>
      {batches.length > 1 ? (
        <Choices name={words.strip.batchChoice} value={batch} onChange={(next) => onChange({ batch: next })} of={[...new Set(batches)].map((value) => ({ value, says: words.strip.batch(value) }))} />
      ) : (
        <p class="small quiet">{batch ? words.strip.batch(batch) : words.strip.noBatch}</p>
      )}
    </Sheet>
  )
}

export const TimesOfStrip = ({ machine, stripIn, read }: { machine: Machine; stripIn: number; read: number }) => {
  const { lab, plan } = useApp()
  const { times } = useWords().strip
  const { timeZone } = plan.value!.plan
  const text = (time: number): string => timeText(time, timeZone)
  const { developer } = stripTimes(lab.value.state.machines[machine.id], machine, stripIn)
  return (
    <dl class="strip-times">
      <dt>{times.in}</dt>
      <dd>{text(stripIn)}</dd>
      {developer ? (
        <>
          <dt>{times.speaksFor}</dt>
          <dd>{text(developer.middle)} <span class="small quiet">({times.span(text(developer.from), text(developer.to))})</span></dd>
        </>
      ) : null}
      <dt>{times.read}</dt>
      <dd>{text(read)}</dd>
    </dl>
  )
}
