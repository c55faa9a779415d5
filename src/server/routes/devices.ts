import type { DeviceId, EntryId, Hash } from '../../record/ids.ts'
import type { Device } from '../../wire/devices.ts'
import type { Chained } from '../../wire/chained.ts'
import { reportRequest } from '../../wire/report.ts'
import { digitsOf } from '../../wire/signed-texts.ts'
import { asideCounts, asidesOf } from '../database/asides.ts'
import { readDevice, readDevices, setDeviceState } from '../database/devices.ts'
import { note } from '../database/log.ts'
import type { DeviceRow } from '../database/tables.ts'
import { Refused } from '../http/refused.ts'
import { Limiter } from '../limiter.ts'
import { sameText } from '../keys.ts'
import { issueCode } from '../people/issue-code.ts'
import type { Parts } from '../parts.ts'
import type { Handler } from './given.ts'

const codeMs = 600_000

const reportOf = (row: DeviceRow): Device['report'] => {
  if (row.report === null) return null
  const parsed = reportRequest.safeParse(JSON.parse(row.report))
  return parsed.success ? { ...parsed.data, at: row.report_at ?? 0 } : null
}

export const deviceFrom = (row: DeviceRow, aside: number): Device => ({
  dev: row.dev as DeviceId,
  name: row.name,
  state: row.state,
  key: { kty: 'EC', crv: 'P-256', x: row.key_x, y: row.key_y },
  digits: digitsOf(row.thumbprint as Hash),
  enrolledAt: row.enrolled_at,
  heardAt: row.heard_at,
  lastSeq: row.last_seq,
  lastHash: row.last_hash as Hash,
  report: reportOf(row),
  aside,
})

export const codes: Handler<'codes'> = ({ parts }) => issueCode(parts.database.sql, parts, { purpose: 'device', until: parts.clock() + codeMs })

export const devices: Handler<'devices'> = async ({ parts }) => {
  const [rows, aside] = [await readDevices(parts.database.sql), await asideCounts(parts.database.sql)]
  return { devices: rows.map((row) => deviceFrom(row, aside.get(row.dev) ?? 0)), serverTime: parts.clock() }
}

const known = async (parts: Parts, dev: string): Promise<DeviceRow> => {
  const row = await readDevice(parts.database.sql, dev)
  if (!row) throw new Refused('notFound', { detail: 'dev' })
  return row
}

const changed = async (parts: Parts, dev: string): Promise<{ device: Device }> => ({
  device: deviceFrom(await known(parts, dev), (await asideCounts(parts.database.sql)).get(dev) ?? 0),
})

/** Five tries at the digits in ten minutes: a supervisor who mistypes more often is looking at another phone. */
export const confirmWith = (parts: Parts): Handler<'confirm'> => {
  const tries = new Limiter({ burst: 5, perSecond: 5 / 600 }, parts.clock)
  return async ({ params, request, supervisor }) => {
    const row = await known(parts, params.dev)
    if (row.state === 'enrolled') return changed(parts, row.dev)
    if (row.state !== 'waiting') throw new Refused(row.state)
    const taken = tries.take(row.dev)
    if (!taken.ok) throw new Refused('tooMany', { retryAfter: taken.retryAfter })
    if (!sameText(digitsOf(row.thumbprint as Hash), request.digits)) throw new Refused('digits')
    await parts.database.transact(async (tx) => {
      await setDeviceState(tx, row.dev, 'enrolled')
      await note(tx, parts.clock(), 'confirmed', { dev: row.dev, person: supervisor })
      await parts.database.announce(tx, { event: 'devices', data: {} })
    })
    return changed(parts, row.dev)
  }
}

export const end: Handler<'end'> = async ({ parts, params, request, supervisor }) => {
  const row = await known(parts, params.dev)
  await parts.database.transact(async (tx) => {
    await setDeviceState(tx, row.dev, request.state)
    await note(tx, parts.clock(), request.state, { dev: row.dev, person: supervisor, detail: `${request.why} (last entry ${row.last_seq})` })
    await parts.database.announce(tx, { event: 'devices', data: {} })
  })
  return changed(parts, row.dev)
}

export const aside: Handler<'aside'> = async ({ parts, params }) => {
  await known(parts, params.dev)
  const rows = await asidesOf(parts.database.sql, params.dev)
  return {
    entries: rows.map((row) => ({
      entry: JSON.parse(row.body) as Chained, id: row.id as EntryId, h: row.h as Hash, sig: row.sig, recvAt: row.recv_at, why: row.why,
    })),
  }
}
