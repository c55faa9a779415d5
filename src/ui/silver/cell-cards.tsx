import { useMemo } from 'preact/hooks'
import type { LabPlan } from '../../plan/lab-plan.ts'
import { shiftAt } from '../../plan/shift-time.ts'
import { spanAt } from '../../projections/machines.ts'
import { seriesOf } from '../../projections/series.ts'
import { cellChecksOf, silverDataOf, silverYield, type SilverData, type SilverYield } from '../../projections/silver.ts'
import { resultOf } from '../../science/evaluate.ts'
import { silverCurrent } from '../../science/silver/current.ts'
import { silverLoad } from '../../science/silver/load.ts'
import { silverPlate } from '../../science/silver/plate.ts'
import { useApp, useWords } from '../app-context.ts'
import { numberText } from '../format.ts'
import { Banner } from '../parts/banner.tsx'
import { LinkButton } from '../parts/button.tsx'
import { Card } from '../parts/card.tsx'

const hour = 3_600_000
const week = 7 * 24 * hour
/** Plated less than this share of what film brought is said aloud. Common practice, no source. */
const lostBelow = 0.7

export const CellCards = ({ plan }: { plan: LabPlan }) => {
  const { lab, phone } = useApp()
  const words = useWords().silver
  const data = silverDataOf(plan)
  const { current, harvest } = cellChecksOf(plan)
  const now = phone.clock.now()
  const { ledger, state } = lab.value
  const currents = useMemo(() => (current ? seriesOf(ledger, current.id) : []), [lab.value, current?.id])
  const harvests = useMemo(() => (harvest ? seriesOf(ledger, harvest.id) : []), [lab.value, harvest?.id])
  if (!current) return <Card title={words.now}><p class="quiet">{words.noCell}</p></Card>
  if (!data) return <Card title={words.now}><p class="quiet">{words.noData}</p></Card>
  const span = (from: number, to: number): SilverYield => silverYield({ plan, machines: state.machines, currents, data, from, to })
  const shift = shiftAt(plan, now)
  const before = shiftAt(plan, shift.from - 1)
  const [previous, last] = [harvests.at(-2), harvests.at(-1)]
  const rows: (readonly [string, SilverYield])[] = [
    [words.spans.shift, span(shift.from, now)], [words.spans.before, span(before.from, shift.from)], [words.spans.week, span(now - week, now)],
    ...(last ? [[words.spans.harvest, span(last.time, now)] as const] : []),
  ]
  const weekRow = rows[2]![1]
  return (
    <>
      <CellNow plan={plan} data={data} amperes={currents.at(-1)?.value} />
      <Card title={words.yields}>
        <div class="table-scroll">
          <table class="data-table">
            <thead><tr><th scope="col">{words.span}</th><th scope="col">{words.plated}</th><th scope="col">{words.brought}</th><th scope="col">{words.share}</th></tr></thead>
            <tbody>
              {rows.map(([name, it]) => (
                <tr key={name}>
                  <th scope="row">{name}<span class="small quiet" style={{ display: 'block', fontWeight: 400 }}>{words.ampereHours(numberText(it.ampereHours, 0))}</span></th>
                  <td class="number">{massText(it.platedGrams)}</td>
                  <td>{massText(it.broughtGrams)}</td>
                  <td>{it.broughtGrams > 0 ? `${numberText((100 * it.platedGrams) / it.broughtGrams, 0)}\u00a0%` : '–'}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
        {unknownHours(weekRow) > 1 ? <p class="small quiet">{words.spans.week}: {words.unknown(numberText(unknownHours(weekRow), 0))}</p> : null}
        {weekRow.broughtGrams > 0 && weekRow.platedGrams < lostBelow * weekRow.broughtGrams ? <p class="flagged">{words.lost}</p> : null}
        <p class="small quiet">{words.source}</p>
        <LinkButton href={`/trends/${current.id}`}>{words.trend}</LinkButton>
      </Card>
      {harvest ? (
        <Card title={words.harvest}>
          {previous && last ? <Harvested weighed={last.value} yielded={span(previous.time, last.time)} data={data} unit={harvest.unit} /> : null}
          <LinkButton href={`/check/${harvest.id}`}>{words.weigh}</LinkButton>
        </Card>
      ) : null}
    </>
  )
}

const unknownHours = ({ from, to, knownHours }: SilverYield): number => (to - from) / hour - knownHours
const massText = (grams: number): string => (grams >= 1000 ? `${numberText(grams / 1000, 2)} kg` : `${numberText(grams, 0)} g`)

const Harvested = ({ weighed, yielded, data, unit }: { weighed: number; yielded: SilverYield; data: SilverData; unit: string }) => {
  const words = useWords().silver
  const grams = unit === 'kg' ? weighed * 1000 : weighed
  const full = yielded.platedGrams / data.efficiencyFraction
  return (
    <>
      <p>{words.harvested(massText(grams), massText(yielded.platedGrams))}</p>
      {full > 0 ? <p class="small quiet">{words.efficiency(numberText((100 * grams) / full, 0), numberText(100 * data.efficiencyFraction, 0))}</p> : null}
    </>
  )
}

/** Current against cathode area and silver in the bath, and what the film of now would ask for. */
const CellNow = ({ plan, data, amperes }: { plan: LabPlan; data: SilverData; amperes: number | undefined }) => {
  const { lab, phone } = useApp()
  const words = useWords().silver
  const { state } = lab.value
  const now = phone.clock.now()
  const silver = plan.checks.flatMap((check) => {
    if (check.kind !== 'reading' || check.of !== 'silver' || check.quantity !== 'concentration' || check.unit !== 'g/L') return []
    const value = state.checks[check.id]?.recent.at(-1)?.value
    return value === undefined ? [] : [value]
  })
  const leanest = silver.length ? Math.min(...silver) : undefined
  const cell = (gramsPerHour: number) => resultOf(silverCurrent, {
    gramsPerHour, efficiencyFraction: data.efficiencyFraction, cathodeSquareMetres: data.cathodeSquareMetres, ...(leanest === undefined ? {} : { silverGramsPerLitre: leanest }),
  })
  const broughtAnHour = plan.machines.reduce((sum, machine) => {
    const { state: runs, metresPerMinute } = spanAt(state.machines[machine.id], now)
    const metres = runs === 'running' ? metresPerMinute * 60 : 0
    return sum + resultOf(silverLoad, { gaugeMillimetres: machine.gaugeMillimetres, metres, gramsPerSquareMetre: data.gramsPerSquareMetre[machine.stock], fractionToFixer: data.fractionToFixer }).grams
  }, 0)
  const at = amperes === undefined ? undefined : cell(resultOf(silverPlate, { amperes, hours: 1, efficiencyFraction: data.efficiencyFraction }).grams)
  return (
    <Card title={words.now}>
      {at?.sulfidingWarning ? (at.amperesPerSquareMetre > at.sulfidingAmperesPerSquareMetre ? <Banner kind="stop" title={words.sulfide} /> : <Banner kind="warn" title={words.lean} />) : null}
      <dl class="pairs">
        <dt>{words.current}</dt><dd>{amperes === undefined ? words.unread : `${numberText(amperes, 1)} A`}</dd>
        {at ? <><dt>{words.density}</dt><dd>{numberText(at.amperesPerSquareMetre, 0)} A/m²</dd></> : null}
        {leanest === undefined ? null : <><dt>{words.inBath}</dt><dd>{numberText(leanest, 1)} g/L</dd></>}
        <dt>{words.needed}</dt><dd>{numberText(cell(broughtAnHour).amperes, 0)} A</dd>
      </dl>
      {at && !at.sulfidingWarning ? <p class="small quiet">{words.calm(numberText(at.sulfidingAmperesPerSquareMetre, 0))}</p> : null}
    </Card>
  )
}
