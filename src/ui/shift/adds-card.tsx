import type { LabPlan } from '../../plan/lab-plan.ts'
import { placeOf } from '../../plan/find.ts'
import type { ShiftPage } from '../../projections/shift-page.ts'
import type { EntryId } from '../../record/ids.ts'
import { useWords } from '../app-context.ts'
import { timeText } from '../format.ts'
import { materialName } from '../material-name.ts'
import { Card, Row, Rows } from '../parts/card.tsx'
import { shortText } from '../units.ts'
import { personName } from './line-text.ts'

/** What was used up, by material with its lots, and each add behind it. */
export const AddsCard = ({ plan, page, onEvidence }: { plan: LabPlan; page: ShiftPage; onEvidence(id: EntryId): void }) => {
  const all = useWords()
  const words = all.shift.adds
  const totalText = (total: number, unit: 'mL' | 'g'): string => (total >= 1000 ? `${shortText(total / 1000, 2)} ${unit === 'mL' ? 'L' : 'kg'}` : `${shortText(total, 1)} ${unit}`)
  if (page.adds.length === 0) return null
  return (
    <Card title={words.title} beside={words.times(page.adds.length)}>
      {page.totals.map(({ material, total, unit, lots, adds }) => (
        <section key={`${material} ${unit}`} class="total">
          <h3 class="spread">
            <span>{materialName(plan, material, all)}</span>
            <strong>{totalText(total, unit)}</strong>
          </h3>
          {lots.length ? <p class="small quiet">{words.lots(lots)}</p> : null}
          <Rows>
            {adds.map((add) => (
              <Row
                key={add.id}
                what={placeOf(plan, add.station).station.name}
                under={[timeText(add.time, plan.timeZone), personName(plan, add.person), add.recheck ? words.rechecked : ''].filter(Boolean).join(' · ')}
                value={`${add.poured.keyed} ${add.poured.unit}`}
                onPress={() => onEvidence(add.id)}
              />
            ))}
          </Rows>
        </section>
      ))}
    </Card>
  )
}
