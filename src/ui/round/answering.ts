import { useState } from 'preact/hooks'
import type { Check, LookCheck, ReadingCheck, StripCheck } from '../../plan/check.ts'
import { judge, type Verdict } from '../../plan/limits.ts'
import { instantWithOffset } from '../../device/clock.ts'
import type { Mark } from '../../projections/checks.ts'
import type { EntryId } from '../../record/ids.ts'
import type { Densities } from '../../rounds/strip/figures.ts'
import { stripData, type StripGiven } from '../../rounds/strip/strip-data.ts'
import type { DataOf } from '../../record/kinds.ts'
import { useApp } from '../app-context.ts'
import { buzz } from '../buzz.ts'
import { asKeyed, type Read } from '../camera/read.ts'
import { useSaving, type Saving } from '../saving.ts'
import { useWords } from '../app-context.ts'
import type { Asked } from './asked.ts'
import type { Half } from './half.ts'

/** What was just saved, and what was known before it: the previous value is shown from now on, not earlier. */
export interface Saved {
  id: EntryId
  kind: 'reading' | 'look' | 'strip'
  verdict: Verdict
  value?: number
  keyed?: string
  figures?: Readonly<Record<string, number>>
  before: readonly Mark[]
  asked: Asked
}

export interface Answering {
  saving: Saving
  saved: Saved | undefined
  /** `read`: what the camera read, where it did; what stands on the pad counts, and the entry says whether the two are the same. `working`: of a value that was worked at the bench. */
  reading(check: ReadingCheck, given: { value: number; keyed: string; secondLook: boolean; read?: Read; working?: NonNullable<DataOf<'reading'>['working']> }): Promise<void>
  look(check: LookCheck, right: boolean): Promise<void>
  /** `aims`: densities of its batch's aims by step. Gives the entry once it is on the disk. */
  strip(check: StripCheck, given: StripGiven, aims?: Densities): Promise<EntryId | undefined>
  skip(check: Check, due: number, reason: DataOf<'skip'>['reason'], remark: string): Promise<void>
  /** Takes the last one back; the log keeps both. */
  undo(): Promise<void>
  /** The same check once more. */
  again(): void
}

interface AnsweringParts {
  half: Half
  asked: Asked
  round: string | undefined
  onAnswered(how: 'done' | 'skipped', id: EntryId): void
  onUndone(id: EntryId, keyed: string): void
}

export const useAnswering = ({ half, asked, round, onAnswered, onUndone }: AnsweringParts): Answering => {
  const { phone, plan, lab, rounds } = useApp()
  const words = useWords()
  const saving = useSaving()
  const [saved, setSaved] = useState<Saved>()

  /** Set forwards, the clock would make a reading of the bath while it mixes one of afterwards: then both times are kept. */
  const beforeItMixed = (now: number): number | undefined => {
    const left = asked.mixingUntil === undefined ? 0 : phone.clock.left(asked.mixingUntil)
    return left > 0 && now > asked.mixingUntil! ? asked.mixingUntil! - left : undefined
  }
  const shared = (check: Check) => {
    const now = phone.clock.now()
    const notedAt = rounds.noted.value[check.id] ?? beforeItMixed(now)
    return {
      check: check.id,
      plan: plan.value!.id,
      ...asked.refs,
      ...(round ? { round } : {}),
      ...(half.atTank ? { atTank: true } : {}),
      ...(notedAt === undefined
        ? { stationSeconds: Math.max(0, Math.round((now - half.stationSince) / 1000)) }
        : { notedAt: instantWithOffset(notedAt, -new Date(notedAt).getTimezoneOffset()) }),
    }
  }
  const keep = async (id: EntryId | undefined, check: Check, it: Omit<Saved, 'id' | 'before' | 'asked'>, before: readonly Mark[]): Promise<void> => {
    if (!id) {
      buzz('refused')
      return
    }
    buzz(it.verdict === 'ACT' ? 'act' : it.verdict === 'WARN' ? 'warn' : 'saved')
    setSaved({ ...it, id, before, asked })
    if (rounds.noted.value[check.id] !== undefined) await rounds.note(check.id, undefined)
    onAnswered('done', id)
  }
  const recent = (check: Check): readonly Mark[] => [...(lab.value.state.checks[check.id]?.recent ?? [])]

  return {
    saving,
    saved,
    reading: async (check, { value, keyed, secondLook, read, working }) => {
      const before = recent(check)
      const { verdict } = judge(check.limits, value)
      const id = await saving.save(
        'reading',
        {
          ...shared(check), value, keyed, unit: check.unit, how: working ? 'worked' : read && keyed === asKeyed(read.text) ? 'read' : 'keyed', verdict, ...(working ? { working } : {}),
          ...(secondLook ? { secondLook } : {}), ...(read ? { seen: { text: read.text, certain: read.certain } } : {}),
        },
        read ? [read.photo] : [],
      )
      await keep(id, check, { kind: 'reading', verdict, value, keyed }, before)
    },
    look: async (check, right) => {
      const before = recent(check)
      const id = await saving.save('look', { ...shared(check), right })
      await keep(id, check, { kind: 'look', verdict: right ? 'IN' : 'ACT' }, before)
    },
    strip: async (check, given, aims) => {
      const before = recent(check)
      const data = stripData(check, given, aims)
      const { check: id, plan: planId, round: roundId, repeatOf, notedAt }: Partial<DataOf<'strip'>> & Pick<DataOf<'strip'>, 'check' | 'plan'> = shared(check)
      const entry = await saving.save('strip', {
        check: id, plan: planId, ...data, ...(roundId ? { round: roundId } : {}), ...(repeatOf ? { repeatOf } : {}), ...(notedAt ? { notedAt } : {}),
      })
      await keep(entry, check, { kind: 'strip', verdict: data.verdict, figures: data.figures }, before)
      return entry
    },
    skip: async (check, due, reason, remark) => {
      const id = await saving.save('skip', { check: check.id, due, reason, ...(remark ? { remark } : {}), ...(round ? { round } : {}) })
      if (!id) return
      buzz('saved')
      onAnswered('skipped', id)
    },
    undo: async () => {
      if (!saved) return
      const done = await saving.save('withdraw', { ref: saved.id, why: words.saving.undoWhy })
      if (!done) return
      setSaved(undefined)
      onUndone(saved.id, saved.keyed ?? '')
    },
    again: () => setSaved(undefined),
  }
}
