import type { ComponentChildren } from 'preact'
import { useWords } from '../app-context.ts'
import { EarlierIcon, LaterIcon } from '../parts/icons.tsx'
import { moved, zoomed, type Window } from './window.ts'

/** Half as much, twice as much, half a window on. */
const closer = 0.5
const step = 0.5

/** What pinching does, without a gesture. */
export const ZoomBar = ({ window, extent, onWindow }: { window: Window; extent: Window; onWindow(window: Window): void }) => {
  const words = useWords().trends.zoom
  const button = (name: string, sign: ComponentChildren, next: Window) => (
    <button type="button" class="button" aria-label={name} onClick={() => onWindow(next)}>{sign}</button>
  )
  return (
    <div class="zoom-bar" role="group" aria-label={words.name}>
      {button(words.back, <EarlierIcon />, moved(window, extent, -step))}
      {button(words.out, '−', zoomed(window, extent, 1 / closer))}
      {button(words.all, words.all, extent)}
      {button(words.in, '+', zoomed(window, extent, closer))}
      {button(words.on, <LaterIcon />, moved(window, extent, step))}
    </div>
  )
}
