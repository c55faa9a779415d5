import type { NoAnswer } from '../../office.ts'

const minutes = (seconds: number): string => (seconds < 90 ? `${Math.ceil(seconds)} seconds` : `${Math.ceil(seconds / 60)} minutes`)

/** What happened, what is safe, what to do: for every refusal of the server. */
export const noAnswer = ({ code, retryAfter, detail }: NoAnswer): string => {
  switch (code) {
    case 'offline':
      return 'The server cannot be reached. Nothing is lost; try again when the network is back.'
    case 'codeUnknown':
      return 'This code is not known. Compare it with the supervisor’s screen, or ask for a new one.'
    case 'codeUsed':
      return 'This code has been used or has run out. Ask the supervisor for a new one.'
    case 'passphrase':
      return 'The passphrase is not right. Key it again.'
    case 'tooMany':
      return `Too many tries. Wait ${minutes(retryAfter ?? 60)}, then try again.`
    case 'digits':
      return 'The digits do not agree. Compare both screens again; if they differ, do not confirm.'
    case 'presence':
      return 'Sign in again with your passphrase.'
    case 'forbidden':
      return 'Only a supervisor may do this.'
    case 'notConfirmed':
      return 'This phone has not been confirmed by a supervisor yet.'
    case 'revoked':
    case 'retired':
    case 'quarantined':
      return 'This phone is no longer a device of the laboratory. What it holds can still be handed in as a file.'
    case 'notDemo':
      return 'Only an invented laboratory can be wiped.'
    case 'lastSupervisor':
      return 'The last supervisor cannot be removed.'
    case 'full':
      return 'The server’s disk is full. What you recorded is safe on this phone.'
    case 'busy':
    case 'timeout':
      return 'The server is busy. Try again in a minute; nothing is lost.'
    case 'unreadable':
      return 'The answer could not be read. The app or the server may be out of date.'
    default:
      return `The server refused (${code}${detail ? `, ${detail}` : ''}). Nothing is lost; tell the supervisor if it comes again.`
  }
}

export const enrol = {
  homeFirst: 'Put the app on the home screen first',
  homeFirstMore: 'Share, then Add to Home Screen; then open it there and key the code. On this phone the app on the home screen has a store of its own: what is recorded here, in the browser, does not go with it, and may be cleared after seven days without use.',
  title: 'Make this phone a device of the laboratory',
  first: {
    title: 'A new laboratory',
    more: 'You are its first supervisor. The code stands in the terminal where the server was started.',
    name: 'Your name',
    passphrase: 'A passphrase of your own',
    passphraseHint: 'At least 8 characters. It signs shifts; nobody can look it up.',
  },
  more: 'Ask a supervisor for a code: it lets this phone in once, within ten minutes.',
  code: 'Code',
  codeHint: 'Ten letters and figures, or open the QR code with the camera.',
  codeFromAddress: 'The code came with the address.',
  deviceName: 'Name of this phone',
  deviceNameHint: 'As people call it: Machine room 1.',
  go: 'Go on',
  asking: 'Asking the server',
  needed: 'This is needed.',
  short: 'At least 8 characters.',
  waitingTitle: 'Compare these figures',
  waiting: 'They must stand on the supervisor’s screen too. When the supervisor confirms, this phone goes on by itself.',
  ended: {
    out: { title: 'This phone has been taken out of the laboratory', more: 'Ask the supervisor why. To bring it back, ask for a new code. What it had not sent can be handed in as a file.' },
    unknown: { title: 'The server does not know this phone', more: 'Ask the supervisor for a new code. What this phone had not sent is kept, and can be saved as a file.' },
  },
  offlineTitle: 'No network',
  offline: 'The first time, this phone must reach the laboratory’s server.',
  tryAgain: 'Try again',
  noAnswer,
  start: {
    title: 'What do you want to start with?',
    demo: 'The demo laboratory',
    demoMore: 'Invented machines, people and readings, to learn with. Wiped in one tap.',
    file: 'A lab plan from a file',
    fileMore: 'JSON, as this app exports it.',
    join: 'Waiting for the lab plan',
    joinMore: 'It comes from the server with the first exchange.',
    loading: (done: number, of: number): string => `Writing the demo laboratory · ${done} of ${of}`,
    problems: 'This file is not a lab plan that holds. Nothing was changed.',
    notJson: 'This file is not JSON.',
    moreProblems: (count: number): string => `and ${count} more`,
  },
  who: {
    title: 'Who has the phone?',
    more: 'Your name stands on everything you record.',
    pin: 'PIN',
    newPin: 'Choose a PIN for this phone',
    newPinHint: 'At least 4 figures. It says who keyed; it is no secret from a thief.',
    supervisor: 'Supervisor',
    operator: 'Operator',
    goOn: 'Go on',
    wrong: (left: number): string => (left > 0 ? `Not this PIN. ${left} ${left === 1 ? 'try' : 'tries'} left before a pause.` : 'Not this PIN.'),
    wait: (seconds: number): string => `Too many tries. Wait ${minutes(seconds)}.`,
    tooShort: 'At least 4 figures.',
  },
}
