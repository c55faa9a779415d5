import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { sha256 } from '../../src/server/keys.ts'
import { chainStart, headText, linkText } from '../../src/wire/signed-texts.ts'
import { openServer, type TestServer } from './server.ts'

let server: TestServer
beforeEach(async () => {
  server = await openServer()
})
afterEach(() => server.close())

describe('the record on the server', () => {
  it('keeps what a phone sends in its order, gives it to another phone, and acknowledges each entry by name', async () => {
    const supervisor = await server.first()
    const other = await server.another(supervisor)
    const entries = [supervisor.phone.entry(), supervisor.phone.entry(), supervisor.phone.entry()]
    const answer = await supervisor.phone.push(entries)
    expect(answer.error).toBeUndefined()
    expect(answer.acks.map(({ id }) => id)).toEqual(entries.map(({ entry }) => entry.id))
    expect((await other.pullAll()).map(({ entry }) => entry.id)).toEqual(entries.map(({ entry }) => entry.id))
  })

  it('takes an entry sent twice once, and acknowledges it both times', async () => {
    const { phone } = await server.first()
    const entries = [phone.entry(), phone.entry()]
    const [first, second] = [await phone.push(entries), await phone.push(entries)]
    expect(second.acks).toEqual(first.acks)
    expect(await phone.pullAll()).toHaveLength(2)
  })

  it('links every entry into one chain whose end the server signs', async () => {
    const { phone } = await server.first()
    const { head } = await phone.push([phone.entry(), phone.entry(), phone.entry()])
    let sh = chainStart
    for (const it of await phone.pullAll()) {
      sh = sha256(linkText({ before: sh, gseq: it.gseq, h: it.h, recvAt: it.recvAt }))
      expect(it.sh).toBe(sh)
    }
    expect(head.sh).toBe(sh)
    expect(server.parts.key.verify(headText(head), head.sig)).toBe(true)
  })

  it('stops at a gap, keeps the good beginning, and says what it wants next', async () => {
    const { phone } = await server.first()
    const [one, , three] = [phone.entry(), phone.entry(), phone.entry()]
    const answer = await phone.push([one, three])
    expect(answer.error).toMatchObject({ code: 'gap', want: 2 })
    expect(answer.acks.map(({ id }) => id)).toEqual([one.entry.id])
  })

  it('sets a device aside that has written two histories', async () => {
    const { phone } = await server.first()
    const [seq, h] = [phone.seq, phone.h]
    await phone.push([phone.entry()])
    phone.seq = seq
    phone.h = h
    const other = phone.entry('note', { text: 'another history', about: 'general' })
    expect((await phone.push([other])).error).toMatchObject({ code: 'fork' })
    const devices = await server.parts.database.sql.selectFrom('devices').select('state').execute()
    expect(devices).toEqual([{ state: 'quarantined' }])
  })

  it('keeps an entry that does not fit its kind, marked, so that it blocks nothing behind it', async () => {
    const { phone } = await server.first()
    const answer = await phone.push([phone.entry('note', { text: '' }), phone.entry('soundTrack', { anything: 1 }), phone.entry()])
    expect(answer.acks).toHaveLength(3)
    expect((await phone.pullAll()).map(({ status }) => status)).toEqual(['invalid', 'opaque', 'valid'])
  })

  it('keeps apart what a device sends after it was taken out', async () => {
    const supervisor = await server.first()
    const lost = await server.another(supervisor)
    await lost.push([lost.entry()])
    const proof = await server.prove(supervisor)
    expect((await supervisor.phone.send('POST', `/api/v1/devices/${lost.dev}/end`, { state: 'revoked', why: 'lost' }, supervisor.phone.presence(proof))).status).toBe(200)
    const answer = await lost.push([lost.entry()])
    expect(answer.error).toMatchObject({ code: 'revoked' })
    expect((await supervisor.phone.pullAll()).map(({ status }) => status)).toEqual(['valid', 'quarantined'])
  })

  it('lets no device in before both screens have shown the same digits', async () => {
    const supervisor = await server.first()
    const proof = await server.prove(supervisor)
    const { long } = (await (await supervisor.phone.send('POST', '/api/v1/codes', undefined, supervisor.phone.presence(proof))).json()) as { long: string }
    const { Phone } = await import('./phone.ts')
    const phone = new Phone(server.ask)
    const { digits, state } = await phone.enrol(long)
    expect(state).toBe('waiting')
    expect((await phone.send('GET', '/api/v1/pull?after=0')).status).toBe(403)
    const wrong = digits === '000000' ? '000001' : '000000'
    expect((await supervisor.phone.send('POST', `/api/v1/devices/${phone.dev}/confirm`, { digits: wrong }, supervisor.phone.presence(proof))).status).toBe(403)
    expect((await supervisor.phone.send('POST', `/api/v1/devices/${phone.dev}/confirm`, { digits }, supervisor.phone.presence(proof))).status).toBe(200)
    expect(await phone.pullAll()).toEqual([])
  })
})
