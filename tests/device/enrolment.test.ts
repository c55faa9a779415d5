import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { MemoryStore } from '../contract/memory-store.ts'
import { issueCode } from '../../src/server/people/issue-code.ts'
import { receiptText } from '../../src/wire/signed-texts.ts'
import { Laboratory, testPhone } from './laboratory.ts'
import { HandClock, saved } from './phone.ts'

let lab: Laboratory
let store: MemoryStore
const clock = new HandClock()
beforeEach(async () => {
  lab = await Laboratory.open(clock)
  store = new MemoryStore()
})
afterEach(() => lab.close())

describe('a phone joins the laboratory', () => {
  test('the first one makes the first supervisor and is let in at once', async () => {
    const { short } = await issueCode(lab.database.sql, { key: lab.key, random: lab.random }, { purpose: 'first', until: clock.now + 1000 })
    const phone = testPhone({ store, fetch: lab.fetch, clock })
    const enrolled = await phone.enrolment.enrol({
      code: ` ${short.slice(0, 5)}-${short.slice(5)} `.toLowerCase(), name: 'Desk', firstSupervisor: { name: 'Ada Quill', passphrase: 'four words are enough' },
    })
    expect(enrolled).toMatchObject({ ok: true, receipt: { state: 'enrolled', person: 'ada-quill' } })
    await saved(phone.append, 'a')
    expect((await phone.sender.sendNow()).problem).toBeUndefined()
  })

  test('an answer that got lost is asked for again with the same key, and one code makes one device', async () => {
    let isLost = true
    const phone = testPhone({
      store,
      clock,
      fetch: async (path, init) => {
        const response = await lab.fetch(path, init)
        if (path.endsWith('/enrol') && isLost) throw new TypeError('connection reset')
        return response
      },
    })
    const request = { code: await lab.code(), name: 'Phone' }
    expect(await phone.enrolment.enrol(request)).toEqual({ ok: false, problem: { code: 'unreachable' } })
    expect(await phone.identity()).toBeUndefined()
    isLost = false
    expect(await phone.enrolment.enrol(request)).toMatchObject({ ok: true, receipt: { state: 'waiting' } })
    expect(await lab.database.sql.selectFrom('devices').selectAll().execute()).toHaveLength(1)
  })

  test('a wrong code, and a code that somebody used, are refused with their reason', async () => {
    const phone = testPhone({ store, fetch: lab.fetch, clock })
    expect(await phone.enrolment.enrol({ code: '0123456789', name: 'Phone' })).toEqual({ ok: false, problem: { code: 'refused', error: 'codeUnknown' } })
    const code = await lab.code()
    await testPhone({ store: new MemoryStore(), fetch: lab.fetch, clock }).enrolment.enrol({ code, name: 'Other' })
    expect(await phone.enrolment.enrol({ code, name: 'Phone' })).toEqual({ ok: false, problem: { code: 'refused', error: 'codeUsed' } })
  })

  test('a receipt for another key, or with other digits, is not taken', async () => {
    const bent = (change: (receipt: Record<string, unknown>) => void) =>
      testPhone({
        store: new MemoryStore(),
        clock,
        fetch: async (path, init) => {
          const response = await lab.fetch(path, init)
          if (!path.endsWith('/enrol')) return response
          const receipt = (await response.json()) as Record<string, unknown>
          change(receipt)
          return new Response(JSON.stringify(receipt), response)
        },
      })
    for (const change of [
      (receipt: Record<string, unknown>) => void (receipt['digits'] = '000000'),
      (receipt: Record<string, unknown>) => void (receipt['dev'] = '00000000000000ff'),
      (receipt: Record<string, unknown>) => void (receipt['sig'] = lab.key.sign('something else')),
      (receipt: Record<string, unknown>) => {
        receipt['seed'] = 'f'.repeat(64)
        receipt['sig'] = lab.key.sign(receiptText(receipt as never))
      },
    ])
      expect(await bent(change).enrolment.enrol({ code: await lab.code(), name: 'Phone' })).toEqual({ ok: false, problem: { code: 'forgedReceipt' } })
  })

  test('an invented laboratory that is wiped leaves nothing of itself on the phone', async () => {
    const phone = testPhone({ store, fetch: lab.fetch, clock })
    await lab.letIn(phone)
    await saved(phone.append, 'invented')
    const before = (await phone.identity())!
    await phone.enrolment.wiped({ ...before.receipt, dev: '00000000000000aa' as typeof before.receipt.dev })
    expect(await phone.store.count()).toBe(0)
    expect((await phone.store.waiting()).count).toBe(0)
    expect((await saved(phone.append, 'real')).entry).toMatchObject({ dev: '00000000000000aa', seq: 1, prev: before.receipt.seed })
  })
})
