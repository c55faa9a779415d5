/** What a database says when it has no room, or is not to be had just now: nothing of the transaction is kept, and the phone tries again later. */
export const faultOfDatabase = (error: unknown): 'full' | 'busy' | 'fault' => {
  const code = typeof error === 'object' && error !== null && 'code' in error ? String(error.code) : ''
  // SQLite by name; PostgreSQL by SQLSTATE: 53100 disk_full, 53200 out_of_memory, 53300 too_many_connections, class 57P and 08 shutdown and lost connections, 40 serialisation.
  if (/^(SQLITE_FULL|ENOSPC|EDQUOT|53100)$/.test(code)) return 'full'
  if (/^(SQLITE_BUSY|SQLITE_LOCKED|ECONNREFUSED|ECONNRESET|53[23]00|57P\w\w|08\w{3}|40\w{3})/.test(code)) return 'busy'
  const message = error instanceof Error ? error.message : ''
  return /Connection terminated|timeout exceeded when trying to connect/.test(message) ? 'busy' : 'fault'
}
