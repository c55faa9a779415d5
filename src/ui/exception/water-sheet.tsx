import { useState } from 'preact/hooks'
import type { Known } from '../../corrections/situation.ts'
import { useWords } from '../app-context.ts'
import { Button } from '../parts/button.tsx'
import { Field } from '../parts/field.tsx'
import { Sheet } from '../parts/sheet.tsx'

const numberOf = (text: string): number => (text.trim() === '' ? Number.NaN : Number(text.replace(',', '.')))

/** Three figures of water that is no working bath: what is at hand there, which no plan can know. */
const ThreeFigures = ({ title, more, names, units, onFigures, onClose }: {
  title: string
  more: string
  names: readonly [string, string, string]
  units: readonly [string, string, string]
  onFigures(figures: readonly [number, number, number]): string | undefined
  onClose(): void
}) => {
  const words = useWords()
  const [keyed, setKeyed] = useState<readonly [string, string, string]>(['', '', ''])
  const [problem, setProblem] = useState<string>()
  const workOut = (): void => {
    const [a, b, c] = [numberOf(keyed[0]), numberOf(keyed[1]), numberOf(keyed[2])]
    const found = Number.isFinite(a + b + c) ? onFigures([a, b, c]) : words.exception.keyAll
    if (found === undefined) onClose()
    else setProblem(found)
  }
  return (
    <Sheet title={title} closeName={words.shell.close} onClose={onClose}>
      <p>{more}</p>
      {problem ? <p class="problem" role="alert">{problem}</p> : null}
      {names.map((name, index) => (
        <Field key={name} name={name} unit={units[index]} kind="decimal" value={keyed[index]!} onChange={(value) => setKeyed([0, 1, 2].map((at) => (at === index ? value : keyed[at]!)) as unknown as typeof keyed)} />
      ))}
      <Button kind="go" onPress={workOut}>{words.exception.workOut}</Button>
    </Sheet>
  )
}

/** Ice for the water of a jacket or for mixing; the working bath is never asked for. */
export const IceSheet = ({ onJacket, onClose }: { onJacket(jacket: NonNullable<Known['jacket']>): void; onClose(): void }) => {
  const say = useWords().exception
  return (
    <ThreeFigures
      title={say.ice}
      more={say.iceMore}
      names={[say.litresOfWater, say.standsAt, say.wantedAt]}
      units={['L', '°C', '°C']}
      onFigures={([litres, fromCelsius, toCelsius]) => {
        if (!(litres > 0 && fromCelsius > toCelsius && toCelsius >= 0 && fromCelsius < 100)) return say.noIceHere
        onJacket({ litres, fromCelsius, toCelsius })
        return undefined
      }}
      onClose={onClose}
    />
  )
}

/** Hot and cold water for a wash or for mixing. */
export const SupplySheet = ({ onSupply, onClose }: { onSupply(supply: NonNullable<Known['supply']>): void; onClose(): void }) => {
  const say = useWords().exception
  return (
    <ThreeFigures
      title={say.supply}
      more={say.supplyMore}
      names={[say.hotAt, say.coldAt, say.litresWanted]}
      units={['°C', '°C', 'L']}
      onFigures={([hotCelsius, coldCelsius, totalLitres]) => {
        if (!(totalLitres > 0 && hotCelsius > coldCelsius && coldCelsius >= 0 && hotCelsius <= 100)) return say.noBlendHere
        onSupply({ hotCelsius, coldCelsius, totalLitres })
        return undefined
      }}
      onClose={onClose}
    />
  )
}
