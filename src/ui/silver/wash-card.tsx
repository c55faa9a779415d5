import type { LabPlan } from '../../plan/lab-plan.ts'
import { washesNow } from '../../projections/wash.ts'
import { useApp, useWords } from '../app-context.ts'
import { numberText } from '../format.ts'
import { Card } from '../parts/card.tsx'

const saltText = (gramsPerLitre: number): string => (gramsPerLitre >= 1 ? `${numberText(gramsPerLitre, 1)} g/L` : `${numberText(gramsPerLitre * 1000, gramsPerLitre < 0.01 ? 2 : 1)} mg/L`)

/** What each wash leaves, and the flow that would leave what is wanted. */
export const WashCard = ({ plan }: { plan: LabPlan }) => {
  const { lab, phone } = useApp()
  const words = useWords().silver
  const washes = washesNow(lab.value.state, plan, phone.clock.now())
  return (
    <Card title={words.wash}>
      {washes.length === 0 ? <p class="quiet">{words.noWash}</p> : null}
      {washes.map((it) => (
        <section key={it.machine.id} class="stack">
          <h3>{it.machine.name}</h3>
          <dl class="pairs">
            <dt>{words.flow}</dt><dd>{numberText(it.litresPerMinute, 1)} L/min</dd>
            <dt>{words.comesIn}</dt><dd>{saltText(it.inGramsPerLitre)}</dd>
            <dt>{words.goesOut}</dt><dd>{saltText(it.outGramsPerLitre)}</dd>
            <dt>{words.wanted}</dt><dd>{saltText(it.wantedGramsPerLitre)}</dd>
            {it.neededLitresPerMinute === undefined ? null : <><dt>{words.neededFlow}</dt><dd>{numberText(it.neededLitresPerMinute, 1)} L/min</dd></>}
            <dt>{words.split}</dt><dd>{saltText(it.splitOutGramsPerLitre)}</dd>
          </dl>
          <p class={it.outGramsPerLitre > it.wantedGramsPerLitre ? 'flagged' : ''}>{it.outGramsPerLitre > it.wantedGramsPerLitre ? words.washPoor : words.washGood}</p>
        </section>
      ))}
      {washes.length ? <p class="small quiet">{words.washDomain}</p> : null}
    </Card>
  )
}
