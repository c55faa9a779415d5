import type { JSX } from 'preact'
import type { StationKind } from '../../plan/machine.ts'
import { Icon } from './icon.tsx'

/** Places beside the film's path, each as what stands there. */
const drawings: Partial<Record<StationKind, JSX.Element>> = {
  drive: <><circle cx="12" cy="12" r="5" /><path d="M12 3.5v3 M12 17.5v3 M3.5 12h3 M17.5 12h3 M6 6l2 2 M16 16l2 2 M6 18l2-2 M16 8l2-2" /></>,
  replenisher: <path d="M7 4h10v13H7z M7 9h10 M12 17v4 M9.5 21h5" />,
  strip: <><path d="M8 3h8v18H8z" /><path d="M8 8h8 M8 12h8 M8 16h8" /></>,
  silverCell: <path d="M4 8v12h16V8 M9 4v12 M15 4v12 M7 4h4 M13 4h4" />,
  mixing: <path d="M5 7v13h14V7 M12 3v12 M8.5 15h7 M8.5 18h7" />,
  instruments: <><circle cx="12" cy="13" r="8" /><path d="M12 13l4-4 M6.5 13h.1 M12 7.5v.1 M17.5 13h.1" /></>,
  plant: <><circle cx="12" cy="12" r="3" /><path d="M12 9c-1-5 4-6 5-4s-1 5-3 5 M15 12c5-1 6 4 4 5s-5-1-5-3 M12 15c1 5-4 6-5 4s1-5 3-5 M9 12c-5 1-6-4-4-5s5 1 5 3" /></>,
  room: <path d="M5 21V4h14v17 M3 21h18 M9 21v-9h6v9" />,
  effluent: <path d="M4 5h7a4 4 0 014 4v2 M12 11h6 M15 14v1.5 M15 19v.1" />,
  solvent: <path d="M9 3h6 M10 3v4l-3 4v10h10V11l-3-4V3 M10 16h4" />,
  stores: <path d="M4 20V8l8-4 8 4v12z M4 13h16 M12 13v7" />,
}

export const PlaceIcon = ({ kind }: { kind: StationKind }) => <Icon>{drawings[kind] ?? <circle cx="12" cy="12" r="7" />}</Icon>
