import { useWords } from '../app-context.ts'

/** A number with its doubtful figures marked by a line and a question mark; never by colour alone. */
export const MarkedNumber = ({ text, doubtful }: { text: string; doubtful: readonly number[] }) => {
  const words = useWords().camera
  return (
    <>
      {[...text].map((figure, at) => (doubtful.includes(at) ? <mark key={at} class="doubtful">{figure}</mark> : figure))}
      {doubtful.map((at) => <span key={at} class="unseen"> {words.doubtfulAt(at)}</span>)}
    </>
  )
}
