import { useState } from 'preact/hooks'
import { useApp, useWords } from '../app-context.ts'
import { Button } from '../parts/button.tsx'
import { Sheet } from '../parts/sheet.tsx'

/** Ends a round before its last step; asked once more, since the rest of it stays due. */
export const EndRound = () => {
  const { rounds, router } = useApp()
  const words = useWords()
  const [asking, setAsking] = useState(false)
  const end = (): void => {
    void rounds.setRound(undefined)
    router.go('/now')
  }
  return (
    <>
      <Button kind="plain" wide onPress={() => setAsking(true)}>{words.round.end}</Button>
      {asking ? (
        <Sheet title={words.round.end} closeName={words.shell.close} onClose={() => setAsking(false)}>
          <p>{words.round.endSure}</p>
          <Button kind="stop" wide onPress={end}>{words.round.endYes}</Button>
        </Sheet>
      ) : null}
    </>
  )
}
