import type { Check } from '../../plan/check.ts'
import { useApp, useWords } from '../app-context.ts'
import { Button } from '../parts/button.tsx'
import { Sheet } from '../parts/sheet.tsx'

/** As far back as one remembers to the minute. */
const minutesAgo = [2, 5, 10, 15, 20, 30] as const

/** Where hands or light do not allow: the time of noting is kept now, the number is keyed when it can be. */
export const NotedSheet = ({ check, onLater, onClose }: { check: Check; onLater(): void; onClose(): void }) => {
  const { rounds, phone } = useApp()
  const words = useWords()
  const { noted } = words.round
  const at = async (time: number | undefined): Promise<void> => {
    await rounds.note(check.id, time)
    onClose()
  }
  return (
    <Sheet title={noted.title} closeName={words.shell.close} onClose={onClose}>
      <Button
        kind="go"
        onPress={() => {
          void at(phone.clock.now()).then(onLater)
        }}
      >
        {noted.now}
      </Button>
      <p class="small quiet">{noted.nowMore}</p>
      <h3>{noted.earlier}</h3>
      <div class="minutes">
        {minutesAgo.map((minutes) => (
          <Button key={minutes} onPress={() => void at(phone.clock.now() - minutes * 60_000)}>{noted.ago(minutes)}</Button>
        ))}
      </div>
      {rounds.noted.value[check.id] === undefined ? null : <Button kind="plain" onPress={() => void at(undefined)}>{noted.forget}</Button>}
    </Sheet>
  )
}
