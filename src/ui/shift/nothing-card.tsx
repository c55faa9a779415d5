import type { ShiftPage } from '../../projections/shift-page.ts'
import { useWords } from '../app-context.ts'
import { Card } from '../parts/card.tsx'
import { hasWaste } from './waste-card.tsx'

/** What did not happen, said in so many words, and together: a page that lists only what did leaves open whether anybody looked. */
export const NothingCard = ({ page }: { page: ShiftPage }) => {
  const words = useWords().shift
  const nothing = [
    page.exceptions.length + page.warned.length ? '' : words.exceptions.none,
    page.holds.length ? '' : words.holds.none,
    page.strips.length ? '' : words.strips.none,
    page.adds.length ? '' : words.adds.none,
    page.cautions.length ? '' : words.cautions.none,
    hasWaste(page) ? '' : words.waste.none,
    page.incidents.length ? '' : words.incidents.none,
  ].filter(Boolean)
  return nothing.length ? (
    <Card>
      <ul class="nothing">{nothing.map((says) => <li key={says}>{says}</li>)}</ul>
    </Card>
  ) : null
}
