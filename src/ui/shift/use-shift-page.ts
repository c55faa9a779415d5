import { useEffect, useMemo, useState } from 'preact/hooks'
import type { LabPlan } from '../../plan/lab-plan.ts'
import type { ShiftSpan } from '../../plan/shift-time.ts'
import { labAsSigned } from '../../projections/as-signed.ts'
import type { Lab } from '../../projections/lab.ts'
import { shiftPage, type ShiftPage } from '../../projections/shift-page.ts'
import { readingPlan } from '../../projections/reading-plan.ts'
import { standingSignature, type Signature } from '../../projections/shift-signatures.ts'
import { cardById } from '../../safety/cards.ts'
import { useApp } from '../app-context.ts'

const day = 86_400_000
const isGated = (card: string): boolean => cardById(card)?.gated ?? true

export interface ShownShift {
  /** As it is now: signatures, what came late, what is in the way. */
  live: ShiftPage
  /** What is shown: as it was signed, where it is signed. */
  shown: ShiftPage
  /** The plan that was in force at its end, with what others had besides: to read what was said under them. */
  plan: LabPlan
  lab: Lab
  signed: { signature: Signature; isProvisional: boolean } | undefined
}

/** A shift's page; undefined while days that are no longer in memory are read. */
export const useShiftPage = (span: ShiftSpan, inForce: LabPlan): ShownShift | undefined => {
  const { lab: told, now, archive } = useApp()
  const { log } = told.value
  const [whole, setWhole] = useState<Lab>()
  const minute = Math.floor(now.value / 60_000)
  const isCut = log.linesBefore > 0
  const first = log.ledger.lines[0]?.time ?? Number.POSITIVE_INFINITY
  // A signed page is told from the whole log, and so is a day that reaches behind what is in memory.
  const isSigned = isCut && log.ledger.lines.some((line) => line.kind === 'signOff' && line.data.shift === span.shift.id && line.data.date === span.date)
  const needsWhole = isCut && (isSigned || span.from - day < first)
  useEffect(() => {
    if (!needsWhole) return
    let isWanted = true
    void archive()
      .then((it) => it.whole())
      .then((it) => {
        if (isWanted) setWhole(it)
      })
    return () => {
      isWanted = false
    }
  }, [needsWhole, told.value])
  const lab = needsWhole ? whole : log
  const plan = lab?.plan(Math.min(now.value, span.to - 1))?.plan ?? inForce
  const live = useMemo(
    () => lab && shiftPage({ lab, plan, span, now: Math.max(now.value, span.from), isGated }),
    [lab, told.value, span.from, span.to, minute],
  )
  const signed = live && standingSignature(live.signatures)
  const shown = useMemo(() => {
    if (!signed || !lab) return live
    const then = labAsSigned(lab, signed.signature)
    return shiftPage({ lab: then, plan: then.plan(Math.min(signed.signature.time, span.to - 1))?.plan ?? plan, span, now: signed.signature.time, isGated })
  }, [signed ? `${signed.signature.id} ${signed.signature.digestText}` : live])
  const read = useMemo(() => lab && readingPlan(lab.state.plans, plan), [lab, plan, lab?.state.plans.revisions.length])
  return lab && live && shown && read ? { live, shown, plan: read, lab, signed } : undefined
}
