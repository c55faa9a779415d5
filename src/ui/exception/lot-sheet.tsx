import { useState } from 'preact/hooks'
import { useApp, useWords } from '../app-context.ts'
import { Button } from '../parts/button.tsx'
import { Field } from '../parts/field.tsx'
import { Sheet } from '../parts/sheet.tsx'

const shownLots = 4

/** The lot of the drum in hand: one of those used before, or a new one. A new lot starts without a learned response. */
export const LotSheet = ({ material, lot, onLot, onClose }: { material: string; lot: string | undefined; onLot(lot: string): void; onClose(): void }) => {
  const { lab } = useApp()
  const words = useWords()
  const say = words.exception
  const [keyed, setKeyed] = useState(lot ?? '')
  const used = [
    ...new Set(
      Object.values(lab.value.state.exceptions.all)
        .flatMap(({ doses }) => doses)
        .filter((dose) => dose.material === material && dose.lot)
        .sort((a, b) => b.time - a.time)
        .map((dose) => dose.lot!),
    ),
  ].slice(0, shownLots)
  return (
    <Sheet title={say.lot} closeName={words.shell.close} onClose={onClose}>
      {used.map((it) => <Button key={it} wide onPress={() => onLot(it)}>{it}</Button>)}
      <Field name={say.lotKeyed} hint={say.lotHint} value={keyed} onChange={setKeyed} />
      <Button kind="go" notYet={keyed.trim() ? undefined : say.lotKeyed} onPress={() => onLot(keyed.trim())}>{words.round.check.savePlain}</Button>
    </Sheet>
  )
}
