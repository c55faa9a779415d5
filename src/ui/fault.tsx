import { useWords } from './app-context.ts'
import { NotHere } from './lazy.tsx'
import { Banner } from './parts/banner.tsx'

/** What a person reads in the place of a screen that could not be drawn. */
export const useFault = (fault: unknown): { title: string; again: string; body: preact.ComponentChildren } => {
  const { shell } = useWords()
  if (fault instanceof NotHere) return { title: shell.notHere.title, again: shell.notHere.again, body: <Banner kind="warn" title={shell.notHere.more} /> }
  return {
    title: shell.fault.title,
    again: shell.fault.again,
    body: (
      <Banner kind="stop" title={shell.fault.more}>
        <code>{fault instanceof Error ? fault.message : String(fault)}</code>
      </Banner>
    ),
  }
}
