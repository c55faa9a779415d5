import { arrivedFrom, type Draft } from '../../src/demo/draft.ts'
import { demoHistory } from '../../src/demo/history.ts'
import { demoLab } from '../../src/demo/lab.ts'
import type { Arrived } from '../../src/projections/line.ts'
import type { DeviceId, EntryId } from '../../src/record/ids.ts'

const week = 7 * 24 * 3_600_000
const shiftsOfAWeek = 21
const planEntry = '01900000-0000-7000-8000-000000000001' as EntryId
const dev = '00000000000000d1' as DeviceId

/** What one week of the demo laboratory wrote, week after week, each with ids of its own, until there are as many entries as asked, the newest in the week of `newest`. */
export const manyEntries = (count: number, newest?: number): Arrived[] => {
  const plan = demoLab()
  const tell = (until: number) => demoHistory({ seed: 7, plan, planEntry, until, shifts: shiftsOfAWeek })
  let told = tell(Date.parse('2026-01-13T10:20:00Z'))
  if (newest !== undefined) told = tell(newest - Math.floor(count / told.length) * week)
  const first: Draft = { id: planEntry, kind: 'plan', data: { plan, effectiveFrom: told[0]!.time }, person: plan.people[0]!.id, time: told[0]!.time }
  const drafts: Draft[] = [first]
  const ids = new Set<string>(told.map(({ id }) => id))
  for (let weeks = 0; drafts.length < count; weeks++) drafts.push(...told.slice(0, count - drafts.length).map((draft) => later(draft, weeks, ids)))
  return arrivedFrom(drafts, dev)
}

const uuid = /[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}/g

const later = (draft: Draft, weeks: number, ids: ReadonlySet<string>): Draft => {
  const renamed = (text: string): string => text.replaceAll(uuid, (id) => (ids.has(id) ? `${(0x02000000 + weeks).toString(16).padStart(8, '0')}${id.slice(8)}` : id))
  return { ...(JSON.parse(renamed(JSON.stringify(draft))) as Draft), time: draft.time + weeks * week }
}
