import type { MeterReading } from '../../reader/reader.ts'
import { useWords } from '../app-context.ts'
import { CutOut } from './cut-out.tsx'
import { MarkedNumber } from './marked-number.tsx'
import { doubtfulPlaces } from './read.ts'

/** The cut-out beside the number read, how sure it is, and why not where it is not. */
export const ReadingPanel = ({ reading }: { reading: MeterReading | undefined }) => {
  const words = useWords().camera
  if (!reading) return <div class="meter-panel"><p class="quiet">{words.aim}</p></div>
  const { text, cutOut, certain, refusal, doubts } = reading
  const whys = [...new Set(doubts.map(({ why }) => why))]
  return (
    <div class="meter-panel">
      {cutOut ? <CutOut of={cutOut} /> : null}
      {text === null ? null : (
        <p class="meter-outcome">
          <output class="read"><MarkedNumber text={text} doubtful={doubtfulPlaces(reading)} /></output>
          <strong class={certain ? 'surety certain' : 'surety'}>{certain ? words.certain : words.check}</strong>
        </p>
      )}
      {refusal ? <p role="status">{words.refusals[refusal]}</p> : null}
      {whys.slice(0, 2).map((why) => <p key={why} class="small">{words.doubts[why]}</p>)}
    </div>
  )
}
