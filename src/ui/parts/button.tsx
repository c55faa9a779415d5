import type { ComponentChildren } from 'preact'
import './button.css'

interface ButtonProps {
  /** `go`: the one thing to do next. `stop`: ends or throws away. `plain`: a way out. */
  kind?: 'go' | 'stop' | 'plain' | undefined
  wide?: boolean
  /** Why it cannot be pressed yet, said by a screen reader; a press then does nothing. */
  notYet?: string | undefined
  onPress(): void
  children: ComponentChildren
}

export const Button = ({ kind, wide, notYet, onPress, children }: ButtonProps) => (
  <button
    type="button"
    class={`button${kind ? ` ${kind}` : ''}${wide ? ' wide' : ''}`}
    aria-disabled={notYet ? 'true' : undefined}
    title={notYet}
    onClick={() => {
      if (!notYet) onPress()
    }}
  >
    {children}
  </button>
)

export const LinkButton = ({ kind, wide, href, newWindow, children }: { kind?: 'go' | 'stop' | 'plain' | undefined; wide?: boolean; href: string; newWindow?: boolean; children: ComponentChildren }) => (
  <a class={`button${kind ? ` ${kind}` : ''}${wide ? ' wide' : ''}`} href={href} target={newWindow ? '_blank' : undefined}>
    {children}
  </a>
)
