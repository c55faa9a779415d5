import { useRef } from 'preact/hooks'
import { useWords } from '../app-context.ts'
import { moved, resized, type Guide } from './display.ts'

type PointerHere = PointerEvent & { readonly currentTarget: HTMLButtonElement }
type Change = (guide: Guide, dx: number, dy: number) => Guide

const arrows: Readonly<Record<string, readonly [number, number]>> = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }
const keyStep = 0.02

/** The box that says where the figures are: dragged about, and pulled larger or smaller at its corner; by arrow keys too. */
export const GuideBox = ({ guide, onChange }: { guide: Guide; onChange(guide: Guide): void }) => {
  const words = useWords().camera
  const from = useRef<{ x: number; y: number; guide: Guide; width: number; height: number } | undefined>(undefined)
  const letGo = (): void => {
    from.current = undefined
  }
  const gripped = (change: Change) => ({
    onPointerDown: (event: PointerHere) => {
      const { width, height } = event.currentTarget.closest('.meter-picture')!.getBoundingClientRect()
      event.currentTarget.setPointerCapture(event.pointerId)
      from.current = { x: event.clientX, y: event.clientY, guide, width, height }
    },
    onPointerMove: (event: PointerHere) => {
      const start = from.current
      if (start) onChange(change(start.guide, (event.clientX - start.x) / start.width, (event.clientY - start.y) / start.height))
    },
    onPointerUp: letGo,
    onPointerCancel: letGo,
    onKeyDown: (event: KeyboardEvent) => {
      const arrow = arrows[event.key]
      if (!arrow) return
      event.preventDefault()
      onChange(change(guide, arrow[0] * keyStep, arrow[1] * keyStep))
    },
  })
  const percent = (share: number): string => `${share * 100}%`
  return (
    <div class="meter-guide" style={{ left: percent(guide.x), top: percent(guide.y), width: percent(guide.width), height: percent(guide.height) }}>
      <button type="button" class="move" aria-label={words.guide} {...gripped(moved)} />
      <button type="button" class="corner" aria-label={words.corner} {...gripped(resized)} />
    </div>
  )
}
