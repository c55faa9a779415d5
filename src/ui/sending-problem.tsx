import { useApp, useWords } from './app-context.ts'
import { Banner } from './parts/banner.tsx'
import { Button, LinkButton } from './parts/button.tsx'

/** Why what waits here does not reach the server. `lastingOnly`: not what mends itself. */
export const SendingProblem = ({ lastingOnly = false }: { lastingOnly?: boolean }) => {
  const { sending, office } = useApp()
  const words = useWords().sending
  const { problem, isLasting } = sending.value
  if (!problem || (lastingOnly && !isLasting)) return null
  const { title, more } = words.why[problem]
  return (
    <Banner kind={isLasting ? 'stop' : 'warn'} title={title}>
      <p>{more}</p>
      {isLasting ? <LinkButton wide href="/menu/files">{words.files}</LinkButton> : null}
      {problem === 'unauthorised' ? <Button wide onPress={office.enrolAnew}>{words.anew}</Button> : null}
    </Banner>
  )
}
