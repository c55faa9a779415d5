import type { ComponentChildren } from 'preact'
import { useEffect, useRef } from 'preact/hooks'
import { Button } from './button.tsx'
import './sheet.css'

/** Something to read or to settle before going on, over the screen that asked for it. Escape and the named button close it. */
export const Sheet = ({ title, closeName, onClose, children }: { title: string; closeName: string; onClose(): void; children: ComponentChildren }) => {
  const dialog = useRef<HTMLDialogElement>(null)
  useEffect(() => {
    const it = dialog.current!
    if (!it.open) it.showModal()
  }, [])
  return (
    <dialog class="sheet" ref={dialog} aria-label={title} onClose={onClose} onCancel={(event) => { event.preventDefault(); onClose() }}>
      <header>
        <h2>{title}</h2>
        <Button onPress={onClose}>{closeName}</Button>
      </header>
      <div class="stack">{children}</div>
    </dialog>
  )
}
