import * as z from 'zod/mini'
import type { SendProblem } from '../../device/problems.ts'
import type { Answered, DoorProblem } from '../../device/server-door.ts'
import { personId } from '../../plan/ids.ts'
import type { Asked, Enrolled, NoAnswer, Office } from '../office.ts'
import { enrolledNow, type OfficeParts, type OfficeState } from './office-of.ts'

export type Desk = Omit<Office, 'codeInAddress' | 'enrolled' | 'enrolAnew' | 'provenUntil'>

const founder = z.strictObject({ id: personId, name: z.string() })
const founderKey = 'firstSupervisor'

/** Everything that is asked of the server besides sending and fetching, by its routes. */
export const openDesk = ({ device, now, onEnrolled }: OfficeParts, { enrolled, proof }: OfficeState): Desk => {
  const { door, store, enrolment } = device
  const presence = (): { presence?: string } => (proof.value && proof.value.until > now() ? { presence: proof.value.proof } : {})
  const asked = <A, T>(answered: Answered<A>, take: (answer: A) => T): Asked<T> =>
    answered.ok ? { ok: true, value: take(answered.answer) } : { ok: false, refusal: noAnswerOf(answered.problem) }
  const lookAgain = async (): Promise<Enrolled> => {
    enrolled.value = await enrolledNow(device)
    return enrolled.value
  }

  return {
    firstSupervisor: async () => {
      const kept = founder.safeParse(await store.take('settings', founderKey))
      return kept.success ? kept.data : undefined
    },
    isClaimed: async () => asked(await door.call('hello'), ({ claimed }) => claimed),
    enrol: async ({ code, deviceName, firstSupervisor }) => {
      const answer = await enrolment.enrol({ code, name: deviceName, ...(firstSupervisor ? { firstSupervisor } : {}) })
      if (!answer.ok) return { ok: false, refusal: noAnswerOfSending(answer.problem) }
      if (answer.receipt.person && firstSupervisor) await store.keep('settings', founderKey, { id: answer.receipt.person, name: firstSupervisor.name })
      await lookAgain()
      onEnrolled()
      return { ok: true, value: answer.receipt }
    },
    askAgain: async () => {
      const answer = await enrolment.isConfirmed()
      if (!answer.ok) return { ok: false, refusal: noAnswerOfSending(answer.problem) }
      const state = await lookAgain()
      if (answer.confirmed) onEnrolled()
      return { ok: true, value: state }
    },
    prove: async (person, passphrase, about) => {
      const answer = asked(await door.call('presence', { body: { person, passphrase, ...(about ? { about } : {}) } }), (it) => it)
      if (answer.ok && !about) proof.value = answer.value
      return answer
    },
    code: async () => asked(await door.call('codes', presence()), (it) => it),
    devices: async () => asked(await door.call('devices'), ({ devices }) => devices),
    confirm: async (dev, digits) => asked(await door.call('confirm', { places: { dev }, body: { digits }, ...presence() }), (it) => it.device),
    end: async (dev, how, why) => asked(await door.call('end', { places: { dev }, body: { state: how, why }, ...presence() }), (it) => it.device),
    setPassphrase: async (person, given) => asked(await door.call('setPassphrase', { places: { person }, body: given, ...presence() }), () => true as const),
    wipeDemo: async (laboratory, person) => {
      const known = await door.call('people')
      const answer = await door.call('wipe', { body: { laboratory, person } })
      if (!answer.ok) return { ok: false, refusal: noAnswerOf(answer.problem) }
      const { receipt } = answer.answer
      await enrolment.wiped(receipt)
      // Whoever stays founds the next laboratory, as after the first enrolment.
      const name = known.ok ? known.answer.people.find((it) => it.person === receipt.person)?.name : undefined
      if (receipt.person) await store.keep('settings', founderKey, { id: receipt.person, name: name ?? receipt.person })
      // Everything in memory speaks of a laboratory that is gone.
      location.assign('/')
      return { ok: true, value: true }
    },
  }
}

const noAnswerOf = (problem: DoorProblem): NoAnswer => {
  if (problem.code !== 'refused') return { code: problem.code === 'strange' ? 'unreadable' : 'offline' }
  const { error, retryAfter, detail } = problem.refusal
  return { code: error, retryAfter, detail }
}

const noAnswerOfSending = (problem: SendProblem | { code: 'forgedReceipt' | 'savedMeanwhile' }): NoAnswer => {
  switch (problem.code) {
    case 'unreachable':
    case 'timeout':
      return { code: 'offline' }
    case 'refused':
      return { code: problem.error as NoAnswer['code'], detail: problem.detail }
    case 'busy':
      return { code: problem.retryAfterSeconds === undefined ? 'busy' : 'tooMany', retryAfter: problem.retryAfterSeconds }
    case 'notConfirmed':
    case 'unauthorised':
    case 'revoked':
    case 'retired':
    case 'quarantined':
    case 'unknownVersion':
    case 'quota':
      return { code: problem.code }
    default:
      return { code: 'unreadable' }
  }
}
