import type { Parts } from '../parts.ts'
import { getBlob, putBlob } from './blobs.ts'
import { aside, codes, confirmWith, devices, end } from './devices.ts'
import { enrol, enrolAgain } from './enrol.ts'
import type { Handlers } from './given.ts'
import { hello, me } from './hello.ts'
import { importUnsent } from './import.ts'
import { importRecord } from './import-record.ts'
import { liveWith } from './live.ts'
import { log } from './log.ts'
import { people, removePassphrase, setPassphrase } from './people.ts'
import { presence } from './presence.ts'
import { pull } from './pull.ts'
import { push } from './push.ts'
import { report } from './report.ts'
import { wipe } from './wipe.ts'

/** One for each route of the wire's table; the compiler counts them. */
export const handlersFor = (parts: Parts): Handlers => ({
  hello, enrol, enrolAgain, me, push, pull, live: liveWith(), report, import: importUnsent, importRecord, putBlob, getBlob, presence, codes, devices,
  confirm: confirmWith(parts), end, aside, people, setPassphrase, removePassphrase, log, wipe,
})
