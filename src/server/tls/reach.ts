import { X509Certificate } from 'node:crypto'
import type { Clock } from '../clock.ts'
import type { Settings } from '../settings.ts'
import { certificateText } from '../words.ts'
import type { Pair } from './authority.ts'
import { authorityFiles, hasAuthority } from './authority-files.ts'
import { namesOf, untilMs } from './certified.ts'
import { addressForPhones, lanAddresses, machineNames } from './machine-names.ts'
import { givenFiles, ownAuthority, renewBeforeMs, type CertificateSource } from './sources.ts'

/** Files named in the settings; else the laboratory's own authority, where the data folder has one; else none, and the server speaks plain http. */
export const certificateSource = ({ tls, folder }: Pick<Settings, 'tls' | 'folder'>, clock: Clock): CertificateSource | undefined => {
  if (tls) return givenFiles(tls)
  const files = authorityFiles(folder)
  return hasAuthority(files) ? ownAuthority(files, { clock, machine: machineNames }) : undefined
}

/** The address that works for whom it is printed, and what there is to say of the certificate behind it. */
export const reachOf = (given: {
  settings: Pick<Settings, 'publicOrigin'>
  port: number
  pair: Pair | undefined
  authority: string | undefined
  now: number
}): { origin: string; notes: string[] } => {
  const { publicOrigin } = given.settings
  // Plain http gives a phone no service worker, camera or keys; only this machine itself counts as safe without a certificate.
  if (!given.pair) return { origin: publicOrigin ?? `http://localhost:${given.port}`, notes: publicOrigin?.startsWith('https:') ? [] : [certificateText.none] }
  const certificate = new X509Certificate(given.pair.cert)
  const lan = lanAddresses()
  const host = addressForPhones(namesOf(certificate), lan)
  const origin = publicOrigin ?? `https://${host ?? lan[0] ?? 'localhost'}:${given.port}`
  const notes: string[] = []
  if (given.authority !== undefined) notes.push(certificateText.authority(origin, new X509Certificate(given.authority).fingerprint256))
  if (untilMs(certificate) - given.now < renewBeforeMs) notes.push(certificateText.runsOut(new Date(untilMs(certificate)).toISOString().slice(0, 10)))
  if (host === undefined && publicOrigin === undefined && lan[0] !== undefined) notes.push(certificateText.notNamed(lan[0]))
  return { origin, notes }
}
