import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import './button.css'

interface ButtonProps {
  /** `go`: the one thing to do next. `stop`: ends or throws away. `plain`: a way out. */
  kind?: 'go' | 'stop' | 'plain' | undefined
  wide?: boolean
  /** Why it cannot be pressed yet: a press then says so, and does nothing else. */
  notYet?: string | undefined
  /** A press before its time. */
  onTooEarly?(): void
  /** What it gives back is waited for: the button shows that it was pressed, and a second press does nothing. */
  onPress(): unknown
  children: ComponentChildren
}

export const Button = ({ kind, wide, notYet, onTooEarly, onPress, children }: ButtonProps) => {
  const [busy, setBusy] = useState(false)
  const [isAsked, setAsked] = useState(false)
  const press = (): void => {
    setAsked(!!notYet)
    if (notYet) return onTooEarly?.()
    if (busy) return
    const done = onPress()
    if (!(done instanceof Promise)) return
    setBusy(true)
    void done.finally(() => setBusy(false))
  }
  return (
    <>
      <button type="button" class={`button${kind ? ` ${kind}` : ''}${wide ? ' wide' : ''}`} aria-disabled={notYet ? 'true' : undefined} aria-busy={busy || undefined} title={notYet} onClick={press}>
        {children}
      </button>
      {isAsked && notYet && notYet !== children ? <span class="small not-yet" role="status">{notYet}</span> : null}
    </>
  )
}

export const LinkButton = ({ kind, wide, href, newWindow, children }: { kind?: 'go' | 'stop' | 'plain' | undefined; wide?: boolean; href: string; newWindow?: boolean; children: ComponentChildren }) => (
  <a class={`button${kind ? ` ${kind}` : ''}${wide ? ' wide' : ''}`} href={href} target={newWindow ? '_blank' : undefined}>
    {children}
  </a>
)
