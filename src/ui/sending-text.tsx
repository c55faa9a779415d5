import { useApp, useWords } from './app-context.ts'

/** How much waits on this phone, and for how long: plain, then framed after four hours, then filled after a day. */
export const SendingText = () => {
  const { sending, now } = useApp()
  const words = useWords()
  const it = sending.value
  const age = it.oldestAt === undefined || it.concern === 'none' ? '' : ` ${words.shell.waitingSince(words.time.span(now.value - it.oldestAt))}`
  return <span class={`sending ${it.concern}`}>{words.shell.waiting(it)}{age}</span>
}
