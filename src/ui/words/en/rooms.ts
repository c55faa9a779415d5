import { bench } from './bench.ts'
import { camera } from './camera.ts'
import { corrections } from './corrections.ts'
import { emergency } from './emergency.ts'
import { enrol } from './enrol.ts'
import { exception } from './exception.ts'
import { labels } from './labels.ts'
import { menu } from './menu.ts'
import { nowMore } from './now-more.ts'
import { pairs } from './pairs.ts'
import { round } from './round.ts'
import { safety } from './safety.ts'
import { shift } from './shift.ts'
import { splice } from './splice.ts'
import { strip } from './strip.ts'
import { trends } from './trends.ts'

/** What every other screen says: fetched with the first of them. A new room is a file and a word here. */
export const rooms = { bench, camera, corrections, emergency, enrol, exception, labels, menu, now: nowMore, pairs, round, safety, shift, splice, strip, trends }
