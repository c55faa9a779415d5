import type { Sending } from '../../app-context.ts'
import type { Trouble } from '../../trouble.ts'

export const shell = {
  places: { now: 'Now', round: 'Round', bench: 'Bench', trends: 'Trends', shift: 'Shift', board: 'Board' },
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
  waiting: ({ waiting, toCome }: Sending): string => [waiting ? `${waiting} to send` : '', toCome ? `${toCome} to come` : ''].filter(Boolean).join(', ') || 'All sent',
  waitingSince: (age: number, span: (age: number) => string): string => (age < 60_000 ? 'since just now' : `for ${span(age)}`),
  update: { title: 'A new version of the app is ready', more: 'It takes a moment. Nothing recorded is touched.', now: 'Use it now' },
  noStore: {
    title: 'Nothing can be recorded here',
    more: 'A reading that is not kept is worse than none, so no round can be started. The emergency cards work all the same.',
  },
  trouble: {
    unavailable: 'This browser keeps nothing. Nothing can be recorded.',
    databaseLost: 'The phone dropped its store. What was saved is safe. Close the app and open it again before you go on.',
    full: 'This phone is full. What was saved is safe; nothing new can be saved until there is room.',
    corrupt: 'A part of the store cannot be read. What can be read is safe: hand it in from the menu, and tell the supervisor.',
    unreadable: 'One entry on this phone cannot be read and is left out. Hand in what there is from the menu, and tell the supervisor.',
    newerVersion: 'A newer version of the app is open. Close this window and go on in the newer one.',
    contended: 'Another window is saving all the time. Close the other windows of the app.',
    blocked: 'Another window of the app holds an older version open. Close it.',
  } satisfies Record<Trouble, string>,
  unsent: {
    warning: (count: number, span: string): string => `${count} ${count === 1 ? 'entry waits' : 'entries wait'} on this phone, the oldest for ${span}`,
    warningMore: 'They are safe here. Bring the phone where it has the network; they go up by themselves.',
    alarm: (count: number, span: string): string => `${count} ${count === 1 ? 'entry has' : 'entries have'} not reached the server for ${span}`,
    alarmMore: 'They are safe on this phone and nowhere else. Find the network now, or hand them in as a file from the menu.',
    send: 'Send now',
  },
  nobody: 'Nobody',
  notFound: { title: 'Nothing here', more: 'This address names no screen.', go: 'To Now' },
  notHere: {
    title: 'This part is not on the phone yet',
    more: 'It comes by itself when the phone reaches the server. What was saved is safe on this phone.',
    again: 'Try again',
  },
  fault: {
    title: 'Something in the app went wrong',
    more: 'What was saved is safe on this phone. Open the app again; if it comes back, tell the supervisor the words below.',
    again: 'Open again',
  },
}
