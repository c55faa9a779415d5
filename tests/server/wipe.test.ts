import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { demoLab } from '../../src/demo/lab.ts'
import type { LabPlan } from '../../src/plan/lab-plan.ts'
import type { Receipt } from '../../src/wire/receipt.ts'
import type { Phone, Supervisor } from './phone.ts'
import { openServer, type TestServer } from './server.ts'

let server: TestServer
let supervisor: Supervisor
beforeEach(async () => {
  server = await openServer()
  supervisor = await server.first()
})
afterEach(() => server.close())

const people = (): LabPlan['people'] => [...demoLab().people, { id: supervisor.person as never, name: 'Helena Sobral', role: 'supervisor' }]
const demo = (more: Partial<LabPlan> = {}): LabPlan => ({ ...demoLab(), people: people(), ...more })
const sign = (plan: LabPlan, effectiveFrom = Date.now()) => supervisor.phone.push([supervisor.phone.entry('plan', { plan, effectiveFrom }, supervisor.person)])
const wipe = (phone: Phone, body: object = { laboratory: demo().name, person: supervisor.person }) => phone.send('POST', '/api/v1/wipe', body)
const count = async (table: 'entries' | 'people' | 'devices' | 'plans'): Promise<number> => (await server.parts.database.sql.selectFrom(table).select((it) => it.fn.countAll<number>().as('n')).executeTakeFirstOrThrow()).n

describe('the demo laboratory', () => {
  it('is wiped by one request of a phone of its own, without a passphrase; the phone and its supervisor stay', async () => {
    await sign(demo())
    await server.another(supervisor)
    const answer = await wipe(supervisor.phone)
    expect(answer.status).toBe(200)
    const { receipt } = (await answer.json()) as { receipt: Receipt }
    expect(receipt).toMatchObject({ state: 'enrolled', person: supervisor.person })
    expect([await count('entries'), await count('plans'), await count('devices'), await count('people')]).toEqual([0, 0, 1, 1])
    // The same phone goes on under its new id; the other one is out.
    supervisor.phone.dev = receipt.dev
    supervisor.phone.epoch = receipt.epoch
    supervisor.phone.seq = 0
    supervisor.phone.h = receipt.seed
    expect((await supervisor.phone.push([supervisor.phone.entry()])).error).toBeUndefined()
  })

  it('leaves a supervisor who can sign in, whoever asked for it', async () => {
    await sign(demo())
    const answer = await wipe(supervisor.phone, { laboratory: demo().name, person: 'marta' })
    expect(((await answer.json()) as { receipt: Receipt }).receipt.person).toBe(supervisor.person)
  })

  it('is not wiped under another name, nor by a phone that was taken out', async () => {
    await sign(demo())
    expect((await wipe(supervisor.phone, { laboratory: 'Quayside' })).status).toBe(409)
    const other = await server.another(supervisor)
    const proof = await server.prove(supervisor)
    await supervisor.phone.send('POST', `/api/v1/devices/${other.dev}/end`, { state: 'revoked', why: 'lost' }, { Presence: proof })
    expect((await wipe(other)).status).toBe(403)
    expect(await count('entries')).toBe(1)
  })
})

describe('a laboratory that is real', () => {
  const { demo: _, ...real } = demoLab()
  it.each<[string, () => Promise<unknown>]>([
    ['has no demo mark', () => sign({ ...real, people: people() })],
    ['was once a demo', async () => [await sign(demo(), Date.now() - 60_000), await sign({ ...real, people: people() })]],
    ['is a demo again after a real plan', async () => [await sign({ ...real, people: people() }, Date.now() - 60_000), await sign(demo())]],
    ['will have a real plan tomorrow', async () => [await sign(demo()), await sign({ ...real, people: people() }, Date.now() + 86_400_000)]],
    ['has no plan yet', async () => supervisor.phone.push([supervisor.phone.entry()])],
  ])('and %s is never wiped, with a passphrase or without', async (_case, begun) => {
    await begun()
    const before = await count('entries')
    for (const extra of [{}, { Presence: await server.prove(supervisor) }]) {
      const answer = await supervisor.phone.send('POST', '/api/v1/wipe', { laboratory: demo().name, person: supervisor.person }, extra)
      expect(await answer.json()).toMatchObject({ error: 'notDemo' })
    }
    expect(await count('entries')).toBe(before)
  })
})
