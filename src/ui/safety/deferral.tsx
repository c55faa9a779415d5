import { useWords } from '../app-context.ts'

/** Who decides where this says otherwise; and, in another language, that nobody competent has checked it yet. A card says the second on its own head. */
export const Deferral = ({ underCard }: { underCard?: boolean }) => {
  const words = useWords().safety
  return (
    <>
      {words.translation && !underCard ? <p class="flagged">{words.translation}</p> : null}
      <p class="small quiet">{words.deferral}</p>
    </>
  )
}
