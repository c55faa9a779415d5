import type { SendProblem } from '../../../device/problems.ts'

export interface Said {
  title: string
  more: string
}

const keepsApart: Said = { title: 'The server no longer counts this phone', more: 'What is recorded here is kept, and counts for nothing until a supervisor has looked. Enrol this phone anew.' }

/** Why what waits on this phone does not go up: what happened, what is safe, what to do. */
export const sending = {
  why: {
    notEnrolled: { title: 'This phone is not a device of a laboratory', more: 'What is recorded here stays here until it is one. Ask a supervisor for a code.' },
    notConfirmed: { title: 'No supervisor has confirmed this phone yet', more: 'Everything is kept here and goes up once its digits are confirmed, under Menu, Devices, on the supervisor’s screen.' },
    unreachable: { title: 'The server cannot be reached', more: 'Everything is kept on this phone and goes up by itself when the network is back.' },
    timeout: { title: 'The server takes too long to answer', more: 'Everything is kept on this phone, which tries again by itself.' },
    strange: { title: 'Something answers that is not the laboratory’s server', more: 'Everything is kept here. See whether the phone is in the laboratory’s own network: a sign-in page of another one may stand between.' },
    busy: { title: 'The server is busy', more: 'Everything is kept on this phone, which tries again by itself.' },
    quota: { title: 'The server takes no more from this phone today', more: 'The rest is kept here and goes up tomorrow. Tell the supervisor: so many entries in a day are unusual.' },
    unknownVersion: { title: 'This app and the server are of different versions', more: 'Everything is kept here. Close the app and open it again where there is a network; if this stays, the server must be brought up to date.' },
    unauthorised: { title: 'The server does not know this phone', more: 'Everything is kept here. Tell the supervisor. If the server was set up anew, save what waits as a file, then enrol this phone anew.' },
    revoked: keepsApart,
    retired: keepsApart,
    quarantined: keepsApart,
    fork: { title: 'The server holds another history of this phone', more: 'The phone was copied, or put back from a backup. Save what waits as a file, then enrol this phone anew.' },
    entryRefused: { title: 'The server refuses an entry of this phone', more: 'It and what came after it are kept here. Save them as a file and tell the supervisor.' },
    recordBroken: { title: 'The server’s record does not agree with what it once signed', more: 'What is on this phone is kept and still good. Take nothing new from the server as true, and tell the supervisor at once.' },
    refused: { title: 'The server refuses what this phone asks', more: 'Everything is kept here. Tell the supervisor if this stays.' },
    store: { title: 'This phone cannot read its own store', more: 'What was saved is safe as far as it can be read. Close the app and open it again; if this stays, save what can be read as a file.' },
  } satisfies Record<SendProblem['code'], Said> as Record<SendProblem['code'], Said>,
  files: 'Files of unsent entries',
  anew: 'Enrol this phone anew',
}
