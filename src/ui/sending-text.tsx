import { useApp, useWords } from './app-context.ts'

/** How much waits on this phone, and for how long: plain, then framed after four hours, then filled after a day. */
export const SendingText = () => {
  const { sending, now } = useApp()
  const words = useWords()
  const it = sending.value
  const age = it.oldestAt === undefined ? '' : ` ${words.shell.waitingSince(now.value - it.oldestAt, words.time.span)}`
  return <span class={`sending ${it.concern}`}>{words.shell.waiting(it)}{age}</span>
}
