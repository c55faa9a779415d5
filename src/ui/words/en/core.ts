import { enrol } from './enrol.ts'
import { marks } from './marks.ts'
import { now } from './now.ts'
import { pad } from './pad.ts'
import { parts } from './parts.ts'
import { shell } from './shell.ts'
import { time } from './time.ts'

/** What the first screens say: it comes with the first load. */
export const core = { shell, enrol, marks, time, now, pad, parts }
