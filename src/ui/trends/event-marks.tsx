import type { SeriesEvent } from '../../projections/series.ts'
import type { Window } from './window.ts'

/** Each kind has a shape of its own; adds and the like stand on the lower edge, borders run through. */
const shapes: Record<SeriesEvent['kind'], string> = {
  add: 'm0 4l5 9h-10z',
  bathReplaced: 'm-5 4h10v9h-10z',
  runOff: 'm0 13l5 -9h-10z',
  stripBatch: 'm0 4l5 4.5l-5 4.5l-5 -4.5z',
  plan: 'm-4 4h8m-8 4h8m-8 4h5',
  shift: '',
}

interface EventMarksProps {
  events: readonly SeriesEvent[]
  window: Window
  x(time: number): number
  top: number
  bottom: number
}

export const EventMarks = ({ events, window, x, top, bottom }: EventMarksProps) => {
  const seen = new Map<string, string>()
  for (const { kind, time } of events) {
    if (time < window.from || time > window.to) continue
    const at = Math.round(x(time))
    seen.set(`${kind} ${at}`, kind === 'shift' ? `M${at} ${top}V${bottom}` : `M${at} ${bottom}${shapes[kind]}`)
  }
  return (
    <>
      {[...seen].map(([key, path]) => <path key={key} class={`event ${key.split(' ')[0]}`} d={path} />)}
      {(['bathReplaced', 'stripBatch'] as const).map((kind) =>
        [...seen.keys()].filter((key) => key.startsWith(kind)).map((key) => <path key={`through ${key}`} class="event through" d={`M${key.split(' ')[1]} ${top}V${bottom}`} />),
      )}
    </>
  )
}

/** Which shape is what, for the kinds that are there. */
export const EventKey = ({ events, names }: { events: readonly SeriesEvent[]; names: Readonly<Record<SeriesEvent['kind'], string>> }) => {
  const kinds = [...new Set(events.map(({ kind }) => kind))]
  if (kinds.length === 0) return null
  return (
    <p class="event-key small">
      {kinds.map((kind) => (
        <span key={kind}>
          <svg class="control-chart" viewBox="-8 0 16 16" width="16" height="16" aria-hidden="true"><path class={`event ${kind}`} d={kind === 'shift' ? 'M0 0V16' : `M0 0${shapes[kind]}`} /></svg>
          {names[kind]}
        </span>
      ))}
    </p>
  )
}
