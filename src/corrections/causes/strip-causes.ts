import type { Check, ReadingCheck, StripCheck } from '../../plan/check.ts'
import { placeOf } from '../../plan/find.ts'
import type { CheckId } from '../../plan/ids.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import { figureLimits } from '../../plan/judge-strip.ts'
import type { Station } from '../../plan/machine.ts'
import type { LabState } from '../../projections/lab.ts'
import { spanAt } from '../../projections/machines.ts'
import { isDeveloper } from '../bath-now.ts'
import { foundBy, isCurrent, lastMark } from '../lookup.ts'
import { dosesInto } from '../situation.ts'
import { say, type Say } from '../say.ts'
import { courseOf, leanOf, signsOf, type Course, type Signs } from './signs.ts'
import { suspects, type Suspect, type Witness } from './suspects.ts'

/** The strip that is asked about. */
export interface StripAsked {
  check: StripCheck
  time: number
  figures: Readonly<Record<string, number>>
  aims?: Readonly<Record<string, number>> | undefined
  batch?: string | undefined
  /** It has been repeated already. */
  isRepeat: boolean
  /** What was seen on the film besides. */
  seen?: readonly NonNullable<Suspect['seen']>[]
}

export interface Cause {
  code: string
  /** Why it stands where it stands, the strongest first. */
  reasons: Say[]
  /** The check that settles it: one tap. */
  settles?: CheckId
  source: string
  weight: number
}

export interface Causes {
  signs: Signs
  course: Course
  causes: Cause[]
}

/** Weights are an order, not a probability. Common practice, no source: a reading that is out weighs more than any pattern. */
const weights = { signFits: 2, signContradicts: -4, out: 6, warning: 4, leans: 2, onAim: -3, opposite: -4, course: 1, event: 3 } as const
const mostCauses = 6

/**
 * Likely causes of a strip that is off, in order, each with the reasons for its place and the check that settles it. The instrument and the repeat come
 * first, whatever the pattern (US Navy 14208); then what the pattern and the last readings speak for.
 */
export const stripCauses = (lab: LabState, plan: LabPlan, asked: StripAsked, now: number): Causes => {
  const { check, figures, aims } = asked
  const signs = signsOf(check, figures, aims)
  const course = courseOfStrip(lab, asked)
  const isOff = Object.values(signs).some((sign) => sign !== 'same')
  if (!isOff && !asked.seen?.length) return { signs, course, causes: [] }
  const found = suspects
    .filter(({ seen }) => seen === undefined || asked.seen?.includes(seen))
    .flatMap((suspect): Cause[] => {
      const pattern = suspect.seen ? { fits: true, weight: 0 } : patternOf(suspect, signs)
      if (!pattern.fits) return []
      const witnessed = witnessOf(lab, plan, asked, suspect, now)
      const slow = suspect.course !== undefined && suspect.course === course
      return [
        {
          code: suspect.code,
          source: suspect.source,
          weight: suspect.first + pattern.weight + witnessed.weight + (slow ? weights.course : 0),
          reasons: [
            ...witnessed.reasons,
            suspect.seen ? say('seenOnFilm', { seen: suspect.seen }) : say('pattern', { ...signs }),
            ...(slow ? [say(course === 'drift' ? 'cameSlowly' : 'cameAtOnce')] : []),
          ],
          ...(witnessed.check ? { settles: witnessed.check } : {}),
        },
      ]
    })
  return { signs, course, causes: [...firstChecks(lab, plan, asked, course, now), ...[...events(lab, plan, asked), ...found].sort((a, b) => b.weight - a.weight).slice(0, mostCauses)] }
}

/** A suspect is dropped when the strip says the opposite of what it would show. */
const patternOf = ({ signs: wanted = {} }: Suspect, signs: Signs): { fits: boolean; weight: number } => {
  let weight = 0
  let met = 0
  for (const [of, sign] of Object.entries(wanted) as [keyof Signs, Signs[keyof Signs]][]) {
    const found = signs[of]
    if (found === undefined) continue
    if (found === sign) {
      weight += weights.signFits
      if (sign !== 'same') met++
    } else if (found === 'same' || sign === 'same') weight -= 1
    else return { fits: false, weight: weights.signContradicts }
  }
  return { fits: met > 0, weight }
}

const placesOf = (plan: LabPlan, { check }: StripAsked): { developers: Station[]; all: Station[] } => {
  const { machine } = placeOf(plan, check.station)
  return { developers: machine.stations.filter(isDeveloper), all: machine.stations }
}

const witnessChecks = (plan: LabPlan, asked: StripAsked, { quantity, of, at = 'developer' }: Witness): ReadingCheck[] => {
  const { developers, all } = placesOf(plan, asked)
  const stations = new Set<string>((at === 'developer' ? developers : at === 'replenisher' ? all.filter(({ kind }) => kind === 'replenisher') : all).map(({ id }) => id))
  return plan.checks.filter(
    (it): it is ReadingCheck =>
      it.kind === 'reading' && stations.has(it.station) && it.quantity === quantity && (!of || (it.of !== undefined && of.includes(it.of))) &&
      // A controller's own display proves nothing that it does not also hold.
      (it.limits.warningLow !== undefined || it.limits.warningHigh !== undefined || it.limits.actionLow !== undefined || it.limits.actionHigh !== undefined),
  )
}

/** What the last readings say of a suspect: the strongest of them counts. */
const witnessOf = (lab: LabState, plan: LabPlan, asked: StripAsked, { witnesses = [] }: Suspect, now: number): { weight: number; reasons: Say[]; check?: CheckId } => {
  const told = witnesses.flatMap((witness) =>
    witnessChecks(plan, asked, witness).map((check) => {
      const found = foundBy(lab, check, now)
      if (!found || !isCurrent(lab, plan, check, found.mark, now)) return { weight: 0, check: check.id, reason: say(found ? 'readLongAgo' : 'neverRead', { check: check.id, ...(found ? { time: found.mark.time } : {}) }), isStale: true }
      const lean = leanOf(check.limits, found.value) * (witness.side === 'high' ? 1 : -1)
      const facts = { check: check.id, keyed: found.mark.keyed ?? String(found.value), aim: check.limits.aim, unit: check.unit, time: found.mark.time }
      const { verdict } = found.judged
      const weight = lean <= -0.5 ? weights.opposite : verdict !== 'IN' && lean > 0 ? (verdict === 'ACT' ? weights.out : weights.warning) : lean >= 0.5 ? weights.leans : weights.onAim
      const code = weight === weights.opposite ? 'readingOpposite' : weight === weights.onAim ? 'readingOnAim' : weight === weights.leans ? 'readingLeans' : 'readingOut'
      return { weight, check: check.id, reason: say(code, facts), isStale: false }
    }),
  )
  if (told.length === 0) return { weight: 0, reasons: [] }
  const [strongest] = [...told].sort((a, b) => b.weight - a.weight)
  // What was not read lately is what settles it, unless something else already speaks for the suspect.
  const settling = strongest!.weight > 0 ? strongest! : (told.find(({ isStale }) => isStale) ?? strongest!)
  return { weight: strongest!.weight, reasons: [strongest!.reason], check: settling.check }
}

/** Instrument first, then the repeat: both are cheap, and without them the rest is guesswork. */
const firstChecks = (lab: LabState, plan: LabPlan, asked: StripAsked, course: Course, now: number): Cause[] => {
  const causes: Cause[] = []
  const proof = plan.checks.find((it: Check) => it.calibrates === 'densitometer')
  if (proof) {
    const mark = lastMark(lab, proof, now)
    const isProved = mark !== undefined && mark.verdict !== 'ACT' && isCurrent(lab, plan, proof, mark, now)
    if (!isProved) causes.push({ code: 'densitometer', settles: proof.id, weight: 10, source: 'US Navy 14208: check the calibration of the instrument first', reasons: [say(mark ? 'proofOld' : 'proofNever', { check: proof.id, ...(mark ? { time: mark.time } : {}) })] })
  }
  if (!asked.isRepeat) causes.push({ code: 'repeatStrip', settles: asked.check.id, weight: 9, source: 'US Navy 14208: run another strip at once', reasons: [say(course === 'jump' ? 'oneStripJumped' : 'oneStrip')] })
  return causes
}

/** What was done to the machine since the last strip that was in limits. */
const events = (lab: LabState, plan: LabPlan, asked: StripAsked): Cause[] => {
  const { machine } = placeOf(plan, asked.check.station)
  const earlier = (lab.strips[asked.check.id]?.recent ?? []).filter(({ time }) => time < asked.time)
  const good = earlier.findLast(({ verdict }) => verdict === 'IN')
  if (!good) return []
  const causes: Cause[] = []
  if (asked.batch !== undefined && good.batch !== undefined && good.batch !== asked.batch)
    causes.push({ code: 'newBatch', weight: weights.event + 3, source: 'US Navy 14208: one sudden jump', reasons: [say('batchChanged', { from: good.batch, to: asked.batch })] })
  const doses = placesOf(plan, asked).developers.flatMap(({ id }) => dosesInto(lab, id)).filter(({ time }) => time > good.time && time <= asked.time)
  const dose = doses.at(-1)
  if (dose) causes.push({ code: 'chemicalChange', weight: weights.event + 2, source: 'US Navy 14208: one sudden jump', reasons: [say('doseSince', { material: dose.material, time: dose.time })] })
  const before = spanAt(lab.machines[machine.id], good.time).metresPerMinute
  const after = spanAt(lab.machines[machine.id], asked.time).metresPerMinute
  if (before > 0 && after > 0 && Math.abs(after / before - 1) > 0.005) causes.push({ code: 'speedChanged', weight: weights.event + 3, source: 'US Navy 14208: one sudden jump', reasons: [say('speedSince', { from: before, to: after })] })
  return causes
}

const courseOfStrip = (lab: LabState, { check, figures, aims, time }: StripAsked): Course => {
  const worst = check.figures
    .filter(({ figure }) => figures[figure] !== undefined)
    .map((each) => ({ figure: each.figure, aim: figureLimits(each, aims).aim, lean: Math.abs(leanOf(figureLimits(each, aims), figures[each.figure]!)) }))
    .sort((a, b) => b.lean - a.lean)[0]
  if (!worst) return 'unknown'
  const before = (lab.strips[check.id]?.recent ?? []).filter((it) => it.time < time).flatMap((it) => it.figures[worst.figure] ?? [])
  return courseOf([...before, figures[worst.figure]!], worst.aim)
}
