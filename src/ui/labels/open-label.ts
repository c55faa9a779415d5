import { labelLeads, type LabelLeads } from '../../rounds/label-leads.ts'
import { presenceKey, type Presence } from '../../rounds/presence.ts'
import { currentStep, goTo, scan } from '../../rounds/round.ts'
import type { TankLabel } from '../../rounds/tank-label.ts'
import type { App } from '../app-context.ts'

/** Goes where a label leads. `isScanned`: the camera of this app saw it just now, so whoever holds the phone stands there. */
export const openLabel = async (app: App, label: TankLabel, isScanned: boolean): Promise<LabelLeads['to']> => {
  const { plan, lab, rounds, phone, router } = app
  const inForce = plan.value?.plan
  if (!inForce) return 'nowhere'
  const now = phone.clock.now()
  const round = rounds.round.value
  const leads = labelLeads(label, { plan: inForce, lab: lab.value.state, round, now })
  if (leads.to === 'nowhere') return 'nowhere'
  if (isScanned) await phone.drafts.put(presenceKey, { station: leads.station, since: now } satisfies Presence)
  if (leads.to === 'step' && round) {
    const isHere = round.at === leads.at || currentStep(round).station === leads.station
    const there = round.at === leads.at ? round : goTo(round, leads.at, now)
    await rounds.setRound(isScanned ? scan(isHere ? there : { ...there, stationSince: now }) : there)
    router.go(`/round/${round.machine}`, 'replace')
  } else router.go(leads.to === 'check' ? `/check/${leads.check}` : `/station/${leads.station}`, 'replace')
  return leads.to
}
