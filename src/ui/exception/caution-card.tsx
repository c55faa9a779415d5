import type { CautionCard, CardLine } from '../../safety/card.ts'
import { statementsOf } from '../../safety/statements.ts'
import { useWords } from '../app-context.ts'
import { Pictogram } from '../parts/pictogram.tsx'

/** A caution as it is read at the tank: the diamonds, the word, what must never happen first; the codes and the rest below. */
export const CautionCardView = ({ card }: { card: CautionCard }) => {
  const words = useWords().safety
  const { ghs } = card
  return (
    <div class="caution-card">
      {card.isOwn ? <p class="flagged">{words.own}</p> : words.translation ? <p class="flagged">{words.translation}</p> : null}
      <header>
        {ghs.pictograms.map((code) => <Pictogram key={code} code={code} name={words.pictograms[code] ?? code} />)}
        <div>
          <h2>{words.say(card.name)}</h2>
          {ghs.signal === 'Danger' || ghs.signal === 'Warning' ? <p class="signal">{words.signal[ghs.signal]}</p> : null}
        </div>
      </header>
      {card.banned ? <p class="banned"><strong>{words.say(card.banned.says)}</strong></p> : null}
      <Lines title={words.sections.never} lines={card.never} isOwn={card.isOwn} />
      <Lines title={words.sections.wear} lines={[...card.wear, ...card.ventilation]} isOwn={card.isOwn} />
      <details>
        <summary>{words.sections.firstAid}</summary>
        <Lines lines={card.firstAid} isOwn={card.isOwn} />
      </details>
      <details>
        <summary>{words.sections.more}</summary>
        <Lines title={words.sections.spill} lines={card.spill} isOwn={card.isOwn} />
        <Lines title={words.sections.storage} lines={card.storage} />
        {ghs.h.length ? <Codes title={words.sections.hazards} codes={ghs.h} /> : null}
        {ghs.regional.length ? <Codes title={words.sections.regional} codes={ghs.regional} /> : null}
        {ghs.p.length ? <Codes title={words.sections.precautions} codes={ghs.p} /> : null}
        {card.exposureLimits.length ? (
          <>
            <h3>{words.sections.limits}</h3>
            <ul>{card.exposureLimits.map((it) => <li key={it.value}>{it.value} <span class="quiet">({it.source})</span></li>)}</ul>
          </>
        ) : null}
        <p class="small quiet">{card.isOwn ? words.ownVersion(card.version) : words.version(card.version, card.source)}</p>
      </details>
    </div>
  )
}

const Lines = ({ title, lines, isOwn }: { title?: string; lines: readonly CardLine[]; isOwn?: true | undefined }) => {
  const words = useWords().safety
  return lines.length ? (
    <>
      {title ? <h3>{title}</h3> : null}
      <ul class="caution-lines">{lines.map((line) => <li key={line.key}>{words.say(line.says)}{line.isOwn && !isOwn ? <span class="small quiet"> ({words.ownLine})</span> : null}</li>)}</ul>
    </>
  ) : null
}

const Codes = ({ title, codes }: { title: string; codes: readonly string[] }) => {
  const { say } = useWords().safety
  return (
    <>
      <h3>{title}</h3>
      <ul class="codes">
        {codes.map((code) => <li key={code}><strong>{code}</strong> {statementsOf(code).map(({ means }) => say(means)).join(' ')}</li>)}
      </ul>
    </>
  )
}
