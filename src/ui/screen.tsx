import type { ComponentChildren } from 'preact'
import { useEffect } from 'preact/hooks'
import { useApp, useWords } from './app-context.ts'
import { tied } from './format.ts'
import { Banner } from './parts/banner.tsx'
import { Backward, EmergencyIcon, MenuIcon } from './parts/icons.tsx'
import { SendingText } from './sending-text.tsx'

interface ScreenProps {
  title: string
  /** Beside or under the title: where and when one is. */
  meta?: ComponentChildren
  /** A screen inside a place has a way back. */
  back?: boolean
  /** The one thing to do next, kept under the thumb. */
  next?: ComponentChildren
  /** A screen that must not scroll: its content shares the height, and the places make room, so that no sleeve leaves it half keyed. */
  fills?: boolean
  /** Takes the whole width of a desk; reading matter does not. */
  wide?: boolean
  children?: ComponentChildren
}

/** Head, content and foot of one screen. The emergency card is one tap from each, and what waits to be sent stands on each. */
export const Screen = ({ title, meta, back, next, fills, wide, children }: ScreenProps) => {
  const { router, plan, trouble } = useApp()
  const words = useWords()
  useEffect(() => {
    document.title = title
  }, [title])
  return (
    <>
      <header class="top">
        {back ? (
          <button type="button" class="icon-button" aria-label={words.shell.back} onClick={() => router.back()}>
            <Backward />
          </button>
        ) : null}
        <div class="title">
          <h1>{tied(title)}</h1>
          <p class="meta">
            {plan.value?.plan.demo ? <abbr class="demo-mark" title={words.shell.demo}>{words.shell.demoShort}</abbr> : null}{' '}
            {meta ? <span>{tied(meta)}</span> : null}{' '}
            <SendingText />
          </p>
        </div>
        <a class="icon-button emergency-button" href="/emergency" aria-label={words.shell.emergency}>
          <EmergencyIcon />
        </a>
        {back ? null : (
          <a class="icon-button" href="/menu" aria-label={words.shell.menu}>
            <MenuIcon />
          </a>
        )}
      </header>
      <main id="content" class={fills ? 'fills' : wide ? 'wide' : undefined}>
        {trouble.value ? <Banner kind="stop" title={words.shell.trouble[trouble.value]} /> : null}
        {children}
        {next ? <div class="next">{next}</div> : null}
      </main>
    </>
  )
}
