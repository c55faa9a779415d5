import type { WalkRow } from './walk-rows.ts'
import { Row, Rows } from '../parts/card.tsx'
import './walk-list.css'

/** What the next shift looks at, to read. */
export const WalkList = ({ rows, label }: { rows: readonly WalkRow[]; label: string }) => (
  <Rows label={label}>{rows.map(({ key, what, under, href }) => <Row key={key} what={what} under={under} href={href} />)}</Rows>
)

/** What the next shift looks at, to tick off one by one. */
export const WalkTicks = ({ rows, ticked, label, onTick }: { rows: readonly WalkRow[]; ticked: ReadonlySet<string>; label: string; onTick(key: string): void }) => (
  <fieldset class="walk">
    <legend class="unseen">{label}</legend>
    {rows.map(({ key, what, under }) => (
      <label key={key}>
        <input type="checkbox" checked={ticked.has(key)} onChange={() => onTick(key)} />
        <span>{what}<span class="small quiet line">{under}</span></span>
      </label>
    ))}
  </fieldset>
)
