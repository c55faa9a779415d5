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
  demoShort: 'Demo',
  demoMore: 'Invented machines, people and readings. Nothing here is real.',
  loading: 'One moment',
  waiting: (sending: Sending): string => (sending.waiting === 0 ? 'All sent' : `${sending.waiting} to send`),
  waitingSince: (span: string): string => `for ${span}`,
  offline: 'No network. Everything is kept on this phone.',
  unsent: {
    warning: (count: number, span: string): string => `${count} ${count === 1 ? 'entry waits' : 'entries wait'} on this phone, the oldest for ${span}`,
    warningMore: 'They are safe here. Bring the phone where it has the network; they go up by themselves.',
    alarm: (count: number, span: string): string => `${count} ${count === 1 ? 'entry has' : 'entries have'} not reached the server for ${span}`,
    alarmMore: 'They are safe on this phone and nowhere else. Find the network now, or hand them in as a file from the menu.',
    send: 'Send now',
  },
  nobody: 'Nobody',
  notFound: { title: 'Nothing here', more: 'This address names no screen.', go: 'To Now' },
  fault: {
    title: 'Something in the app went wrong',
    more: 'What was saved is safe on this phone. Open the app again; if it comes back, tell the supervisor the words below.',
    again: 'Open again',
  },
}
