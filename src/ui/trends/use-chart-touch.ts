import { useEffect, useRef } from 'preact/hooks'
import type { Numbers } from './control-chart.tsx'
import { indexAt } from './thin.ts'
import { zoomed, type Window } from './window.ts'

interface TouchAsked {
  svg: { current: SVGSVGElement | null }
  times: Numbers
  window: Window
  extent: Window
  /** Edges of the plot and width of the picture, in its own units. */
  left: number
  right: number
  width: number
  onWindow(window: Window): void
  onChoose(index: number): void
}

/** One finger or the mouse chooses a point, two fingers zoom, and so does the wheel with Ctrl. Buttons beside the chart do the same: no gesture is needed. */
export const useChartTouch = (asked: TouchAsked) => {
  const now = useRef(asked)
  now.current = asked
  const fingers = useRef(new Map<number, number>())
  /** Times under the two fingers when the second came down. */
  const held = useRef<{ times: readonly [number, number] } | undefined>(undefined)
  const { svg } = asked

  const timeAt = (clientX: number): number => {
    const { left, right, width, window } = now.current
    const box = svg.current!.getBoundingClientRect()
    const at = ((clientX - box.left) / box.width) * width
    return window.from + ((at - left) / (right - left)) * (window.to - window.from)
  }
  const choose = (clientX: number): void => {
    const { times, window, onChoose } = now.current
    const first = indexAt(times, window.from)
    const last = indexAt(times, window.to + 1) - 1
    if (last < first) return
    const time = timeAt(clientX)
    const after = Math.min(last, Math.max(first, indexAt(times, time)))
    const before = Math.max(first, after - 1)
    onChoose(time - times[before]! < times[after]! - time ? before : after)
  }
  const pinch = (): void => {
    const [a, b] = [...fingers.current.values()]
    const { left, right, width, extent, onWindow } = now.current
    if (a === undefined || b === undefined || !held.current) return
    const box = svg.current!.getBoundingClientRect()
    const share = (clientX: number): number => (((clientX - box.left) / box.width) * width - left) / (right - left)
    const [from, to] = [share(a), share(b)]
    if (Math.abs(to - from) < 0.02) return
    const span = (held.current.times[1] - held.current.times[0]) / (to - from)
    if (!(span > 0)) return
    const start = held.current.times[0] - from * span
    onWindow(zoomed({ from: start, to: start + span }, extent, 1))
  }

  useEffect(() => {
    const it = svg.current
    if (!it) return
    const wheel = (event: WheelEvent): void => {
      if (!event.ctrlKey) return
      event.preventDefault()
      const { window, extent, onWindow } = now.current
      onWindow(zoomed(window, extent, Math.exp(event.deltaY / 300), timeAt(event.clientX)))
    }
    it.addEventListener('wheel', wheel, { passive: false })
    return () => it.removeEventListener('wheel', wheel)
  }, [])

  const lift = (event: PointerEvent): void => {
    fingers.current.delete(event.pointerId)
    held.current = undefined
  }
  return {
    onPointerDown: (event: PointerEvent): void => {
      fingers.current.set(event.pointerId, event.clientX)
      const [a, b] = [...fingers.current.values()]
      if (a !== undefined && b !== undefined) held.current = { times: [timeAt(a), timeAt(b)] }
      else choose(event.clientX)
    },
    onPointerMove: (event: PointerEvent): void => {
      if (!fingers.current.has(event.pointerId)) return
      fingers.current.set(event.pointerId, event.clientX)
      if (fingers.current.size > 1) pinch()
      else choose(event.clientX)
    },
    onPointerUp: lift,
    onPointerCancel: lift,
    onPointerLeave: lift,
  }
}
