import { Icon } from './icon.tsx'

export const Onward = () => (
  <svg class="onward" viewBox="0 0 10 18" fill="none" stroke="currentColor" stroke-width="2.5" stroke-linecap="round" stroke-linejoin="round" aria-hidden="true" focusable="false">
    <path d="M2 2l6 7-6 7" />
  </svg>
)
export const Backward = () => <Icon><path d="M15 4l-8 8 8 8" /></Icon>
export const Forward = () => <Icon><path d="M9 4l8 8-8 8" /></Icon>
export const EarlierIcon = () => <Icon><path d="M12 5l-7 7 7 7 M19 5l-7 7 7 7" /></Icon>
export const LaterIcon = () => <Icon><path d="M5 5l7 7-7 7 M12 5l7 7-7 7" /></Icon>
export const EraseIcon = () => <Icon size={30}><path d="M9 5h12v14H9l-6-7z M12.5 9.5l5 5 M17.5 9.5l-5 5" /></Icon>
export const CameraIcon = () => <Icon><path d="M3 8h4l2-3h6l2 3h4v11H3z" /><circle cx="12" cy="13" r="3.5" /></Icon>
/** A triangle, as warnings have it: the emergency card. */
export const EmergencyIcon = () => <Icon><path d="M12 3l9 17H3z M12 10v4 M12 17v.01" /></Icon>
export const MenuIcon = () => <Icon><path d="M4 7h16 M4 12h16 M4 17h16" /></Icon>
export const SentIcon = () => <Icon size={20}><path d="M4 12.5l5 5L20 6.5" /></Icon>
export const WaitingIcon = () => <Icon size={20}><path d="M12 20V6 M6 12l6-6 6 6 M5 3h14" /></Icon>
/** A bar across the strand. */
export const HoldIcon = () => <Icon><path d="M3 12h4 M17 12h4 M9 5v14 M15 5v14" /></Icon>
export const CallIcon = () => <Icon><path d="M5 4h4l1.5 5-2.5 2a12 12 0 005 5l2-2.5 5 1.5v4c0 1-1 2-2 2A16 16 0 013 6c0-1 1-2 2-2z" /></Icon>
export const LightIcon = () => <Icon><circle cx="12" cy="12" r="4" /><path d="M12 3v2 M12 19v2 M3 12h2 M19 12h2 M5.6 5.6L7 7 M17 17l1.4 1.4 M18.4 5.6L17 7 M7 17l-1.4 1.4" /></Icon>

/** The five places, each in the language of film and tank. */
export const NowIcon = () => <Icon><path d="M3 5h4v10a2.5 2.5 0 005 0V9a2.5 2.5 0 015 0v6a2 2 0 004 0" /></Icon>
export const RoundIcon = () => <Icon><path d="M20 12a8 8 0 11-2.5-5.8 M20 3v4h-4" /></Icon>
export const BenchIcon = () => <Icon><path d="M9 3h6 M10 3v6l-5 9a2 2 0 002 3h10a2 2 0 002-3l-5-9V3 M7.5 14h9" /></Icon>
export const TrendsIcon = () => <Icon><path d="M3 8h18 M3 16h18" stroke-dasharray="2 3" /><path d="M3 13l5-2 4 3 5-7 4 2" /></Icon>
export const BoardIcon = () => <Icon><path d="M3 4h18v13H3z M12 4v13 M12 10h9 M9 21h6" /></Icon>
export const ShiftIcon = () => <Icon><path d="M6 3h12v18H6z M9 8h6 M9 12h6 M9 17c1.5-2 2-1 3 0s2 .5 3-.5" /></Icon>
