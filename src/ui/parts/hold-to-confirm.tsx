import type { ComponentChildren } from 'preact'
import { useEffect, useRef, useState } from 'preact/hooks'
import { buzz } from '../buzz.ts'
import { SentIcon } from './icons.tsx'
import './hold-to-confirm.css'

const holdMilliseconds = 1200

interface HoldToConfirmProps {
  done: boolean
  hint: string
  onConfirm(): void
  children: ComponentChildren
}

/**
 * One press that is held until the line has filled: a deliberate yes, which a brush of a sleeve cannot give.
 * The space bar or Enter, held, does the same; a switch or screen reader, which sends a click without holding, is asked a second time.
 */
export const HoldToConfirm = ({ done, hint, onConfirm, children }: HoldToConfirmProps) => {
  const [held, setHeld] = useState(0)
  const [askedAgain, setAskedAgain] = useState(false)
  const from = useRef<number | undefined>(undefined)
  const frame = useRef(0)
  const stop = (): void => {
    cancelAnimationFrame(frame.current)
    from.current = undefined
    setHeld(0)
  }
  useEffect(() => stop, [])
  const start = (): void => {
    if (done || from.current !== undefined) return
    from.current = performance.now()
    const tick = (): void => {
      if (from.current === undefined) return
      const share = (performance.now() - from.current) / holdMilliseconds
      if (share >= 1) {
        stop()
        buzz('saved')
        onConfirm()
        return
      }
      setHeld(share)
      frame.current = requestAnimationFrame(tick)
    }
    frame.current = requestAnimationFrame(tick)
  }
  return (
    <button
      type="button"
      class="hold-to-confirm"
      aria-pressed={done}
      style={{ '--held': String(done ? 1 : held) }}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId)
        start()
      }}
      onPointerUp={stop}
      onPointerCancel={stop}
      onContextMenu={(event) => event.preventDefault()}
      onKeyDown={(event) => {
        if (event.key === ' ' || event.key === 'Enter') {
          event.preventDefault()
          start()
        }
      }}
      onKeyUp={stop}
      onBlur={stop}
      onClick={(event) => {
        // detail 0: neither mouse nor finger, but an assistive technology.
        if (done || event.detail !== 0) return
        if (askedAgain) onConfirm()
        else setAskedAgain(true)
      }}
    >
      <span class="fill" />
      <span class="says">
        <span>{children}<span class="small quiet" style={{ display: 'block' }}>{done ? '' : hint}</span></span>
        {done ? <SentIcon /> : null}
      </span>
    </button>
  )
}
