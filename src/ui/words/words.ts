import { bench } from './en/bench.ts'
import { emergency } from './en/emergency.ts'
import { corrections } from './en/corrections.ts'
import { enrol } from './en/enrol.ts'
import { exception } from './en/exception.ts'
import { marks } from './en/marks.ts'
import { menu } from './en/menu.ts'
import { now } from './en/now.ts'
import { pad } from './en/pad.ts'
import { parts } from './en/parts.ts'
import { round } from './en/round.ts'
import { safety } from './en/safety.ts'
import { saving } from './en/saving.ts'
import { shell } from './en/shell.ts'
import { shift } from './en/shift.ts'
import { time } from './en/time.ts'
import { trends } from './en/trends.ts'

/** Every sentence that a person reads. Another language is another object of this type. */
export const en = { shift, shell, marks, time, saving, now, round, emergency, exception, corrections, safety, parts, pad, bench, enrol, menu, trends }
export type Words = typeof en
