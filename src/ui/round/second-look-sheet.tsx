import type { ReadingCheck } from '../../plan/check.ts'
import type { SecondLook } from '../../rounds/second-look.ts'
import { useWords } from '../app-context.ts'
import { decimalsOf, numberText } from '../format.ts'
import { Button } from '../parts/button.tsx'
import { Sheet } from '../parts/sheet.tsx'
import { clockText } from '../parts/timer-ring.tsx'

interface SecondLookSheetProps {
  check: ReadingCheck
  keyed: string
  far: SecondLook | undefined
  settledFor: number | undefined
  onAgain(): void
  onWait(): void
  onKeep(): void
}

/** Asks once more before a surprising number is kept, and never refuses it. */
export const SecondLookSheet = ({ check, keyed, far, settledFor, onAgain, onWait, onKeep }: SecondLookSheetProps) => {
  const words = useWords()
  const { secondLook } = words.round
  const decimals = decimalsOf(check.step)
  return (
    <Sheet title={secondLook.title} closeName={words.shell.close} onClose={onWait}>
      {far ? <p class="lead">{secondLook.far(keyed, numberText(far.usual, decimals))}</p> : null}
      {far?.slip === undefined ? null : <p class="lead">{secondLook.slip(numberText(far.slip, decimals))}</p>}
      {settledFor === undefined ? null : <p class="lead">{secondLook.unsettled(clockText(settledFor), clockText(check.settleSeconds ?? 0))}</p>}
      {far ? <p class="small quiet">{secondLook.ask}</p> : null}
      {far ? <Button kind="go" onPress={onAgain}>{secondLook.again}</Button> : <Button kind="go" onPress={onWait}>{secondLook.wait}</Button>}
      <Button wide onPress={onKeep}>{secondLook.keep(keyed)}</Button>
    </Sheet>
  )
}
