import { checkId, stationId, type CheckId, type StationId } from '../plan/ids.ts'

/** What a label at a tank names: the station, or one of its checks. */
export type TankLabel = { station: StationId } | { check: CheckId }

/**
 * The text of the QR code on a tank: an address of this app's own, so that an ordinary camera opens it too. The version comes first, so
 * that a label printed today is understood for ever.
 */
export const tankLabelPath = (label: TankLabel): string => ('station' in label ? `/at/1/station/${label.station}` : `/at/1/check/${label.check}`)

export type ReadLabel = { ok: true; label: TankLabel } | { ok: false; code: 'notALabel' | 'otherLaboratory' | 'laterVersion' }

/** Reads a scanned text. `origin` is this laboratory's address, as `https://bath.lab.example`. */
export const parseTankLabel = (text: string, origin: string): ReadLabel => {
  const match = /^(https?:\/\/[^/\s]+)?\/at\/(\d+)\/(station|check)\/([a-z0-9-]+)$/.exec(text.trim())
  if (!match) return { ok: false, code: 'notALabel' }
  const [, from, version, kind, id] = match
  if (from !== undefined && from !== origin) return { ok: false, code: 'otherLaboratory' }
  if (version !== '1') return { ok: false, code: 'laterVersion' }
  const parsed = (kind === 'station' ? stationId : checkId).safeParse(id)
  if (!parsed.success) return { ok: false, code: 'notALabel' }
  return { ok: true, label: kind === 'station' ? { station: id as StationId } : { check: id as CheckId } }
}
