import type { StoreFaultCode } from './faults.ts'

/** Why an exchange with the server did not come to its end. The page has a sentence for each: nothing of it loses an entry. */
export type SendProblem =
  | { code: 'notEnrolled' }
  /** A supervisor has not confirmed this phone yet, or not again after the server was restored. */
  | { code: 'notConfirmed' }
  | { code: 'unreachable' }
  | { code: 'timeout' }
  /** Something answered that is not this server. */
  | { code: 'strange'; status: number; detail: string }
  /** The server asks to be left alone, for so many seconds if it said so. */
  | { code: 'busy'; retryAfterSeconds?: number }
  /** More in one day than it takes from a phone; it goes on tomorrow. */
  | { code: 'quota' }
  /** This page is too old for the server, or the server for this page. */
  | { code: 'unknownVersion' }
  /** The server does not know this phone, or not its key. */
  | { code: 'unauthorised' }
  /** This phone was written off; what it sends is kept and counts for nothing. */
  | { code: 'revoked' | 'retired' | 'quarantined' }
  /** The server holds another history of this phone: a copied or restored profile. It must be enrolled anew. */
  | { code: 'fork'; seq: number }
  /** The server will not take this entry of ours. */
  | { code: 'entryRefused'; seq: number; why: 'signature' | 'envelope' | 'tooLarge' | 'chain' | 'gap' }
  /** The server's record contradicts itself or what it once signed. */
  | { code: 'recordBroken'; gseq: number; why: 'link' | 'head' | 'headSignature' }
  /** Anything else that the server refuses. */
  | { code: 'refused'; error: string; detail?: string }
  | { code: 'store'; fault: StoreFaultCode; where: string }

/** Only people can mend these: trying again soon is no use. */
const lasting: ReadonlySet<SendProblem['code']> = new Set([
  'notEnrolled', 'unknownVersion', 'unauthorised', 'revoked', 'retired', 'quarantined', 'fork', 'entryRefused', 'recordBroken', 'quota',
])
export const isLasting = ({ code }: SendProblem): boolean => lasting.has(code)
