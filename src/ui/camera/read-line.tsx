import { useWords } from '../app-context.ts'
import { CutOut } from './cut-out.tsx'
import { asKeyed, type Read } from './read.ts'

/** On the check's screen, until it is saved: the cut-out beside the number, and whether a person has mended it. Erasing the number drops it. */
export const ReadLine = ({ read, keyed }: { read: Read; keyed: string }) => {
  const words = useWords().camera
  const isMended = keyed !== asKeyed(read.text)
  return (
    <div class="read-line small">
      <CutOut of={read.cutOut} />
      <strong class={read.certain ? 'surety certain' : 'surety'}>{read.certain ? words.certain : words.check}</strong>
      {isMended ? <span>{words.mended(read.text)}</span> : null}
    </div>
  )
}
