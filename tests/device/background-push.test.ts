import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { pushInBackground } from '../../src/device/background-push.ts'
import type { Phone } from '../../src/device/open-phone.ts'
import type { EntryId } from '../../src/record/ids.ts'
import { setDeviceState } from '../../src/server/database/devices.ts'
import { Laboratory, testPhone } from './laboratory.ts'
import { freshIndexedDb, HandClock, idbStore, saved } from './phone.ts'

let lab: Laboratory
let phone: Phone
let sent: EntryId[]
const clock = new HandClock()
beforeEach(async () => {
  freshIndexedDb()
  lab = await Laboratory.open(clock)
  phone = testPhone({ store: idbStore(), fetch: lab.fetch, clock })
  sent = []
})
afterEach(async () => {
  await phone.close()
  await lab.close()
})
const push = (fetch: Laboratory['fetch'] = lab.fetch) => pushInBackground({ clock, fetch, databaseName: 'test', onSent: (ids) => sent.push(...ids) })

describe('sending from the service worker', () => {
  test('what waits goes up with no page open, in several pushes, and the page finds it sent', async () => {
    await lab.letIn(phone)
    const ids = []
    for (let count = 0; count < 230; count++) ids.push((await saved(phone.append, `n${count}`)).entry.id)
    expect(await push()).toBe('done')
    expect(sent).toEqual(ids)
    expect((await phone.store.waiting()).count).toBe(0)
    expect(await lab.entries()).toHaveLength(230)
    expect(await push()).toBe('done')
    expect((await phone.sender.sendNow()).problem).toBeUndefined()
    expect((await phone.store.byIds([ids[229]!]))[0]).toMatchObject({ gseq: 230 })
  }, 20_000)

  test('page and service worker at the same time send everything once', async () => {
    await lab.letIn(phone)
    for (let count = 0; count < 40; count++) await saved(phone.append, `n${count}`)
    await Promise.all([push(), phone.sender.sendNow(), push()])
    expect(await lab.entries()).toHaveLength(40)
    expect((await phone.store.waiting()).count).toBe(0)
  })

  test('no network or a busy server is for later, everything odd is for the page', async () => {
    expect(await push()).toBe('page')
    await lab.letIn(phone)
    await saved(phone.append, 'a')
    expect(await push(() => Promise.reject(new TypeError('Failed to fetch')))).toBe('later')
    const answers = (status: number, body: object) => (path: string, init: RequestInit) =>
      path.endsWith('/push') ? Promise.resolve(new Response(JSON.stringify(body), { status })) : lab.fetch(path, init)
    expect(await push(answers(503, { error: 'busy' }))).toBe('later')
    expect(await push(answers(200, { acks: [{ id: 'another', seq: 1, gseq: 1 }, null, 'x'] }))).toBe('page')
    expect(await push(answers(200, { acks: 'all of them' }))).toBe('page')
    expect((await phone.store.waiting()).count).toBe(1)
    await setDeviceState(lab.database.sql, (await phone.store.head())!.dev, 'retired')
    expect(await push()).toBe('page')
    expect((await phone.store.waiting()).count).toBe(0)
  })
})
