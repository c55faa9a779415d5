import { useEffect, useRef } from 'preact/hooks'
import { buzz } from '../buzz.ts'
import { EraseIcon } from './icons.tsx'
import './number-pad.css'

const keys = ['1', '2', '3', '4', '5', '6', '7', '8', '9'] as const

interface NumberPadProps {
  value: string
  /** May give what stands on the pad after it, where that is something else: the next step of a strip begins empty. */
  onChange(value: string): string | undefined | void
  onEnter(): void
  /** Decimals that the instrument shows; 0 leaves the point out. */
  decimals: number
  /** Readings below nought are possible. */
  minus?: boolean
  longest?: number
  names: { erase: string; point: string; minus: string; pad: string }
}

/** Large keys for gloves; the same with a hardware keyboard or a wedge scanner. Nothing is refused here: the reading is judged on entry. */
export const NumberPad = ({ value, onChange, onEnter, decimals, minus = false, longest = 8, names }: NumberPadProps) => {
  // A keyboard wedge types faster than the screen is drawn: what stands counts, not what was last drawn.
  const standing = useRef(value)
  standing.current = value
  const change = (next: string): void => {
    standing.current = onChange(next) ?? next
  }
  const press = (key: string): void => {
    const now = standing.current
    buzz('key')
    if (key === 'erase') change(now.slice(0, -1))
    else if (key === '-') change(now.startsWith('-') ? now.slice(1) : `-${now}`)
    else if (now.length < longest) change(now + key)
  }
  const pad = useRef<HTMLDivElement>(null)
  // What was drawn last counts, not what was listened to last: a wedge sends Enter before the effects of its last figure have run.
  const onKey = useRef<(event: KeyboardEvent) => void>(() => undefined)
  onKey.current = (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return
    const at = event.target instanceof HTMLElement ? event.target : undefined
    // A sheet over the screen has the keys, and a pad in the sheet has its own.
    if (at?.closest('input, textarea, select') || (at?.closest('dialog') ?? null) !== (pad.current?.closest('dialog') ?? null)) return
    if (/^\d$/.test(event.key)) press(event.key)
    else if ((event.key === '.' || event.key === ',') && decimals > 0) press('.')
    else if (event.key === '-' && minus) press('-')
    else if (event.key === 'Backspace') press('erase')
    else if (event.key === 'Enter' && !at?.closest('button, a')) onEnter()
    else return
    event.preventDefault()
    // Enter after a figure is meant for the figure, not for what had the focus before it.
    if (event.key !== 'Enter') pad.current?.focus({ preventScroll: true })
  }
  useEffect(() => {
    const listen = (event: KeyboardEvent): void => onKey.current(event)
    addEventListener('keydown', listen)
    return () => removeEventListener('keydown', listen)
  }, [])
  return (
    <div ref={pad} class="pad" role="group" tabIndex={-1} aria-label={names.pad}>
      {keys.map((key) => (
        <button key={key} type="button" onClick={() => press(key)}>{key}</button>
      ))}
      <div class={minus && decimals > 0 ? 'last four' : 'last'}>
        {minus ? <button type="button" aria-label={names.minus} onClick={() => press('-')}>±</button> : decimals > 0 ? null : <span />}
        {decimals > 0 ? <button type="button" aria-label={names.point} onClick={() => press('.')}>.</button> : null}
        <button type="button" onClick={() => press('0')}>0</button>
        <button type="button" aria-label={names.erase} onClick={() => press('erase')}><EraseIcon /></button>
      </div>
    </div>
  )
}
