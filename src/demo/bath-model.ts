import type { ReadingCheck } from '../plan/check.ts'
import type { CheckId } from '../plan/ids.ts'
import type { Random } from './random.ts'

/** Share of the warning limit within which a well-run figure wanders (one standard deviation). Invented, so that a WARN comes now and then. */
const wander = 0.5
const scatter = 0.2
/** How much of its wandering a figure keeps from one reading to the next. */
const memory = 0.85

/** Figures that drift and scatter about their aims, as baths do; a story moves one away, a correction brings it back. */
export class BathModel {
  readonly #random: Random
  #wandering = new Map<CheckId, number>()
  #moved = new Map<CheckId, number>()

  constructor(random: Random) {
    this.#random = random
  }

  /** Something happens to the bath: from now on it reads this much more. */
  move(check: CheckId, by: number): void {
    this.#moved.set(check, (this.#moved.get(check) ?? 0) + by)
  }

  /** A story that must be told: whatever it wandered before, from now on it stands so far from its aim. */
  bring(check: CheckId, by: number): void {
    this.#wandering.set(check, 0)
    this.#moved.set(check, by)
  }

  /** The fault is mended: half of what is left of the wandering goes with it. */
  mend(check: CheckId): void {
    this.#moved.delete(check)
    this.#wandering.set(check, (this.#wandering.get(check) ?? 0) / 2)
  }

  /** What the instrument shows, on its own step and within its range. */
  read(check: ReadingCheck): number {
    const size = sizeOf(check)
    const before = this.#wandering.get(check.id) ?? wander * size * this.#random.normal()
    const after = memory * before + Math.sqrt(1 - memory ** 2) * wander * size * this.#random.normal()
    this.#wandering.set(check.id, after)
    return this.again(check)
  }

  /** The same bath a minute later: only the scatter of the instrument differs, which is a step of it at most (one standard deviation). */
  again(check: ReadingCheck): number {
    const noise = Math.min(scatter * sizeOf(check), check.step) * this.#random.normal()
    const value = check.limits.aim + (this.#wandering.get(check.id) ?? 0) + (this.#moved.get(check.id) ?? 0) + noise
    return onStep(Math.min(check.instrument.high, Math.max(check.instrument.low, value)), check.step)
  }
}

/** Distance from the aim to the nearer warning limit, else action limit, else a few steps. */
const sizeOf = ({ limits, step }: ReadingCheck): number => {
  const distances = (low: number | undefined, high: number | undefined): number[] => [low, high].filter((it) => it !== undefined).map((it) => Math.abs(it - limits.aim))
  const warning = distances(limits.warningLow, limits.warningHigh)
  const action = distances(limits.actionLow, limits.actionHigh)
  return Math.min(...(warning.length ? warning : action.length ? action : [3 * step]))
}

export const decimalsOf = (step: number): number => String(step).split('.')[1]?.length ?? 0
export const onStep = (value: number, step: number): number => Number((Math.round(value / step) * step).toFixed(decimalsOf(step)))
