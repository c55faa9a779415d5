import { NotDone } from './backup/backup-file.ts'
import { notDoneText } from './backup/words.ts'
import { FolderInUse } from './folder-lock.ts'
import { OtherKey } from './server-key.ts'
import { BadCertificate } from './tls/certified.ts'

/**
 * What the server program says to whoever stands at its terminal: what happened, what is safe, what to do. Phones get codes, and have their
 * own words for them.
 */
export const notBuilt = 'The front end has not been built yet. Start the server with "npm start", or run "npm run build" once.\n'

export const startText = (it: { address: string; qr: string; code: string | undefined; certificate: readonly string[]; folder: string }): string =>
  [
    '',
    `Bathkeeper  ${it.address}`,
    '',
    it.qr,
    it.code === undefined ? '' : `No supervisor yet. Open the address above, or key this code there: ${it.code}\nIt serves once, within 24 hours. The page then offers the demo laboratory or a plan of your own.`,
    ...it.certificate,
    `The record is kept in ${it.folder}`,
    '',
  ].join('\n')

/** What whoever stands at the terminal is to know of the certificate. */
export const certificateText = {
  none: 'Without a certificate the app works on this machine only: phones need HTTPS. "npm run certificate" makes one (README, What a laboratory needs).',
  authority: (origin: string, fingerprint: string): string => `A new phone first trusts ${origin}/ca.pem, whose fingerprint (SHA-256) must be\n  ${fingerprint}`,
  runsOut: (validTo: string): string => `The certificate runs out on ${validTo}, and this server cannot renew it. Phones refuse it from then on; they keep what they hold.`,
  notNamed: (address: string): string =>
    `The certificate does not name ${address}, by which phones would come: they will be warned off. Make one that does: npm run certificate -- --new`,
}

const certificateProblem = (fault: string, file: string): string => {
  const what: Readonly<Record<string, string>> = {
    missing: 'does not exist', noCertificate: 'holds no certificate in PEM form', noKey: 'holds no private key in PEM form',
    encryptedKey: 'holds a key that is locked with a passphrase, which the server cannot ask for', mismatch: 'holds a key that does not belong to the certificate',
    forged: 'was not made by the authority beside it',
  }
  return `The certificate cannot be used: ${file} ${what[fault] ?? fault}. Nothing recorded was touched; put the right file there and start again.`
}

const codeOf = (error: unknown): string => (error instanceof Error && 'code' in error ? String(error.code) : '')

/** What happened, what is safe, what to do: for a server that cannot start. */
export const startProblem = (error: unknown): string => {
  const message = error instanceof Error ? error.message : String(error)
  const name = error instanceof Error ? error.name : ''
  if (name === 'BadSetting') return `The setting ${message}. Nothing was touched; correct it and start again.`
  if (error instanceof BadCertificate) return certificateProblem(error.fault, error.file)
  if (name === 'CorruptDatabase')
    return `The database is damaged (${message}). It was not touched. Keep a copy of the data folder, then put the latest backup in its place; phones send again what they hold.`
  if (error instanceof NotDone) return notDoneText(error)
  if (error instanceof FolderInUse) return `Another Bathkeeper runs on the data folder ${error.folder}. Nothing was touched; stop that one first, or name another folder in BATHKEEPER_DATA.`
  if (error instanceof OtherKey)
    return `The record belongs to another server key than ${error.file}. Nothing was touched. Put that file back from the backup, or from the other instance; phones believe no other. If it is lost for good, start once with NEW_SERVER_KEY=yes and enrol every phone anew.`
  if (name === 'ForeignDatabase') return 'The database was written by a later version of Bathkeeper, or by another program. It was not touched. Start the version that wrote it.'
  switch (codeOf(error)) {
    case 'EADDRINUSE':
      return 'The port is in use, perhaps by another Bathkeeper. Nothing was touched; stop the other one, or choose a port: PORT=8081 npm start'
    case 'EACCES':
    case 'EPERM':
    case 'EROFS':
    case 'SQLITE_READONLY':
    case 'SQLITE_CANTOPEN':
      return `The data folder cannot be written (${message}). Nothing was touched; give this user the right to write there, or name another folder in BATHKEEPER_DATA.`
    case 'ENOSPC':
    case 'SQLITE_FULL':
      return 'The disk is full. What was acknowledged is safe; make room and start again.'
    default:
      return `The server could not start: ${message}. What was acknowledged before is safe in the data folder.`
  }
}
