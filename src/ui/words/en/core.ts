import { marks } from './marks.ts'
import { now } from './now.ts'
import { pad } from './pad.ts'
import { parts } from './parts.ts'
import { shell } from './shell.ts'
import { time } from './time.ts'

/** What the first screen says: it comes with the first load. */
export const core = { shell, marks, time, now, pad, parts }
