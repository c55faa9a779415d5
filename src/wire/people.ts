import * as z from 'zod/mini'
import { shownName } from './messages.ts'

/** The people with a passphrase on this server, and those of the plan in force. */
export const peopleAnswer = z.strictObject({
  people: z.array(
    z.strictObject({
      person: z.string(),
      name: z.string(),
      hasPassphrase: z.boolean(),
      /** May sign and manage: has a passphrase, and the plan in force does not call them an operator. */
      supervisor: z.boolean(),
    }),
  ),
})
export type PeopleAnswer = z.infer<typeof peopleAnswer>

/**
 * Sets or replaces a passphrase. One's own: with `current`, nothing else. Another supervisor's, first or forgotten: with the presence of a
 * supervisor. A laboratory whose only supervisor has forgotten it takes a new code at the server's terminal.
 */
export const passphraseRequest = z.strictObject({
  passphrase: z.string().check(z.minLength(8), z.maxLength(200)),
  current: z.optional(z.string().check(z.minLength(1), z.maxLength(200))),
  /** Needed where the person is not in the plan yet. */
  name: z.optional(shownName),
})
export type PassphraseRequest = z.infer<typeof passphraseRequest>

/** What the server noted of itself: enrolments, revocations, forks, wrong passphrases, heads that went backwards, restores. */
export const logAnswer = z.strictObject({
  lines: z.array(
    z.strictObject({
      n: z.number(),
      at: z.number(),
      what: z.enum([
        'started', 'claimed', 'enrolled', 'enrolledAgain', 'confirmed', 'revoked', 'retired', 'fork', 'chain', 'passphraseWrong', 'passphraseSet',
        'passphraseRemoved', 'presence', 'headBehind', 'headOther', 'headForged', 'restored', 'wiped', 'imported', 'codesVoided',
      ]),
      dev: z.optional(z.string()),
      person: z.optional(z.string()),
      detail: z.optional(z.string()),
    }),
  ),
})
export type LogAnswer = z.infer<typeof logAnswer>
