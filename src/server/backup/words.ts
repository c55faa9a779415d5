import { walkedText } from '../verify/words.ts'
import type { NotDone } from './backup-file.ts'

const megabytes = (bytes: number): string => `${(bytes / 1e6).toFixed(1)} MB`

/** What stopped a backup or a restore, and what to do. */
export const notDoneText = ({ code, file, walked }: NotDone): string => {
  const found = walked ? `${walkedText(walked)}\n` : ''
  switch (code) {
    case 'exists':
      return `${file} is there already, and a backup never replaces another. Nothing was written; give another name.`
    case 'noFolder':
      return `There is no folder ${file}. Nothing was written; make it first, or name another place.`
    case 'noDatabase':
      return `There is no database ${file}. Name the data folder in BATHKEEPER_DATA.`
    case 'noBackup':
      return `There is no file ${file}. Nothing was touched.`
    case 'noRecord':
      return `${file} is no backup of a Bathkeeper. Nothing was touched.`
    case 'noKey':
      return `The server's key that goes with this record is not there (${file}), and phones believe no other. Nothing was touched; put it there and try again.`
    case 'broken':
      return `${found}${file} does not hold. Nothing was touched. Where there is no better one, --even-if-broken takes it all the same.`
  }
}

export const backupText = (it: { file: string; key: string; bytes: number; walked: string }): string =>
  `${it.walked}\n\nKept in ${it.file} (${megabytes(it.bytes)}), with the server's key in ${it.key}. Keep both, away from this machine.`

export const restoredText = (it: { walked: string; gseq: number; epoch: string; replaced: string | undefined }): string =>
  [
    it.walked,
    '',
    `The record goes on from entry ${it.gseq} in epoch ${it.epoch}; the server's log says so. Phones notice at their next exchange, and send again what they hold.`,
    it.replaced === undefined ? '' : `What was replaced is kept as ${it.replaced}`,
  ].filter((line, place) => place < 2 || line !== '').join('\n')

export const usePgDump = `The record is in PostgreSQL (DATABASE_URL), so its own tools make the backup, while the servers run:

  pg_dump --format=custom --file=bathkeeper.dump "$DATABASE_URL"

Keep server-key.pem of the data folder beside it. To put it back: stop every server, pg_restore --clean --if-exists --dbname="$DATABASE_URL" bathkeeper.dump,
then npm run restore (without a file), which begins a new epoch.`

export const isServedText = 'A server is connected to this database. Nothing was touched; stop every server first.'
