import type { ComponentChildren } from 'preact'
import './banner.css'

/** What happened, what is safe, what to do. `stop` interrupts a screen reader, the others wait their turn. */
export const Banner = ({ kind = 'plain', title, children }: { kind?: 'plain' | 'warn' | 'stop'; title: string; children?: ComponentChildren }) => (
  <div class={`banner ${kind}`} role={kind === 'stop' ? 'alert' : 'status'}>
    <strong>{title}</strong>
    {children}
  </div>
)

/** A place with nothing in it yet says what will be there and how it comes. */
export const Empty = ({ title, children }: { title: string; children?: ComponentChildren }) => (
  <div class="banner plain">
    <strong>{title}</strong>
    {children ? <div class="quiet">{children}</div> : null}
  </div>
)
