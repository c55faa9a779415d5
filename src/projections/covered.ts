import type { DeviceId } from '../record/ids.ts'

/** Numbers of entries by device, as runs: `[[1, 410], [412, 498]]`. */
export type Covered = { [dev: DeviceId]: [number, number][] }

export const isCovered = (covered: Covered, { dev, seq }: { dev: DeviceId; seq: number }): boolean =>
  covered[dev]?.some(([from, to]) => from <= seq && seq <= to) ?? false

/** The runs of some entries joined to those already covered. */
export const coveredBy = (entries: readonly { dev: DeviceId; seq: number }[], before: Covered = {}): Covered => {
  const numbers = new Map<DeviceId, [number, number][]>()
  for (const [dev, runs] of Object.entries(before) as [DeviceId, [number, number][]][]) numbers.set(dev, runs.map(([from, to]) => [from, to]))
  for (const { dev, seq } of entries) {
    const runs = numbers.get(dev)
    if (!runs) numbers.set(dev, [[seq, seq]])
    else if (runs.at(-1)![1] === seq - 1) runs.at(-1)![1] = seq
    else runs.push([seq, seq])
  }
  const joined: Covered = {}
  for (const [dev, runs] of numbers) {
    joined[dev] = []
    for (const [from, to] of runs.sort((a, b) => a[0] - b[0])) {
      const last = joined[dev].at(-1)
      if (last && from <= last[1] + 1) last[1] = Math.max(last[1], to)
      else joined[dev].push([from, to])
    }
  }
  return joined
}
