import type { Sending } from '../../app-context.ts'

export const shell = {
  places: { now: 'Now', round: 'Round', bench: 'Bench', trends: 'Trends', shift: 'Shift' },
  placesName: 'Places',
  emergency: 'Emergency',
  menu: 'Menu',
  back: 'Back',
  close: 'Close',
  skipToContent: 'To the content',
  demo: 'Demo laboratory',
  demoMore: 'Invented machines, people and readings. Nothing here is real.',
  loading: 'One moment',
  waiting: (sending: Sending): string => (sending.waiting === 0 ? 'All sent' : `${sending.waiting} to send`),
  offline: 'No network. Everything is kept on this phone.',
  nobody: 'Nobody',
  notFound: { title: 'Nothing here', more: 'This address names no screen.', go: 'To Now' },
  fault: {
    title: 'Something in the app went wrong',
    more: 'What was saved is safe on this phone. Open the app again; if it comes back, tell the supervisor the words below.',
    again: 'Open again',
  },
}
