import type * as z from 'zod/mini'
import { acknowledge } from './kinds/acknowledge.ts'
import { add } from './kinds/add.ts'
import { caution } from './kinds/caution.ts'
import { amend, close, withdraw } from './kinds/correction.ts'
import { hold, release } from './kinds/hold.ts'
import { look } from './kinds/look.ts'
import { mix, mixCertificate, mixEnd, mixStep } from './kinds/mix.ts'
import { note, photo } from './kinds/note.ts'
import { plan } from './kinds/plan.ts'
import { reading } from './kinds/reading.ts'
import { responseReset } from './kinds/response-reset.ts'
import { run } from './kinds/run.ts'
import { drumOut, runOff } from './kinds/run-off.ts'
import { countersign, handover, signOff } from './kinds/sign-off.ts'
import { skip } from './kinds/skip.ts'
import { strip } from './kinds/strip.ts'
import { stripBatch } from './kinds/strip-batch.ts'

/** Every kind of entry, with the schema of its data. A new kind is a file and a line here. */
export const kinds = {
  reading, look, skip, strip, stripBatch, add, caution, hold, release, run, note, photo, amend, withdraw, close, signOff, countersign, handover, plan,
  mix, mixStep, mixCertificate, mixEnd, runOff, drumOut, responseReset, acknowledge,
} as const

export type Kind = keyof typeof kinds
export type DataOf<K extends Kind> = z.infer<(typeof kinds)[K]>
export const isKind = (text: string): text is Kind => Object.hasOwn(kinds, text)
