import { useEffect, useState } from 'preact/hooks'
import type { Machine } from '../../plan/machine.ts'
import { spanAt } from '../../projections/machines.ts'
import { spliceSeconds } from '../../rounds/splice.ts'
import { isForgotten, spliceHeld, spliceKey, type SpliceHeld } from '../../rounds/splice-held.ts'
import { useApp, useWords } from '../app-context.ts'
import { buzz } from '../buzz.ts'
import { clocksOf } from '../clocks-of.ts'
import { NotFound } from '../not-found.tsx'
import { Banner } from '../parts/banner.tsx'
import { Button } from '../parts/button.tsx'
import { NumberPad } from '../parts/number-pad.tsx'
import { clockText } from '../parts/timer-ring.tsx'
import { Screen } from '../screen.tsx'
import { filmText, lengthIn, metresOf, shortText, speedText } from '../units.ts'
import { SpliceCountdown } from './splice-countdown.tsx'
import './splice.css'

/** The window of a splice: the elevator feeds the machine while the tail is held. `/splice/<machine>`. */
export const SpliceScreen = () => {
  const { plan, router } = useApp()
  const machine = plan.value?.plan.machines.find(({ id }) => id === router.here.value.rest[0])
  return machine ? <OfMachine key={machine.id} machine={machine} /> : <NotFound back />
}

const OfMachine = ({ machine }: { machine: Machine }) => {
  const { phone } = useApp()
  const [held, setHeld] = useState<SpliceHeld | 'none'>()
  const key = spliceKey(machine.id)
  useEffect(() => {
    void phone.drafts.get(key).then((kept) => {
      const parsed = spliceHeld.safeParse(kept)
      setHeld(parsed.success && !isForgotten(parsed.data, clocksOf(phone)) ? parsed.data : 'none')
    })
  }, [key])
  if (held === undefined) return <Screen title={machine.name} back />
  if (held === 'none') {
    return (
      <Ready
        machine={machine}
        onHeld={(next) => {
          setHeld(next)
          void phone.drafts.put(key, next)
        }}
      />
    )
  }
  return (
    <SpliceCountdown
      machine={machine}
      held={held}
      onReleased={() => {
        setHeld('none')
        void phone.drafts.remove(key)
      }}
    />
  )
}

/** How long there will be, before the tail is held: with a full elevator, or with what its mark shows. */
const Ready = ({ machine, onHeld }: { machine: Machine; onHeld(held: SpliceHeld): void }) => {
  const { lab, plan, now, phone } = useApp()
  const words = useWords()
  const say = words.splice
  const unit = plan.value!.plan.units.length
  const [other, setOther] = useState<string>()
  const { metresPerMinute } = spanAt(lab.value.state.machines[machine.id], now.value)
  const full = machine.reserveMetres ?? 0
  const reserveMetres = other === undefined ? full : Math.min(full || Number.POSITIVE_INFINITY, metresOf(Number(other.replace(',', '.')) || 0, unit))
  const seconds = spliceSeconds({ reserveMetres, metresPerMinute })
  const hold = (): void => {
    buzz('saved')
    onHeld({ v: 1, machine: machine.id, reserveMetres, metresPerMinute, ...clocksOf(phone) })
  }
  if (!(metresPerMinute > 0)) return <Screen title={say.title} meta={machine.name} back><Banner title={say.stands}><p>{say.standsMore}</p></Banner></Screen>
  return (
    <Screen title={say.title} meta={machine.name} back fills={other !== undefined} next={<Button kind="go" notYet={reserveMetres > 0 ? undefined : say.noReserve} onPress={hold}>{say.hold}</Button>}>
      <div class="splice">
        <p class="left" role="timer" aria-label={`${say.window} ${clockText(Math.floor(seconds))}`}>{clockText(Math.floor(seconds))}</p>
        <p class="lead">{say.sum(filmText(reserveMetres, unit), speedText(metresPerMinute, unit))}</p>
      </div>
      {other === undefined ? (
        <>
          <p class="small quiet">{say.more}</p>
          <Button wide onPress={() => setOther(full ? shortText(lengthIn(full, unit), 0) : '')}>{say.otherReserve}</Button>
        </>
      ) : (
        <NumberPad value={other} onChange={setOther} onEnter={() => setOther(undefined)} decimals={0} longest={4} names={{ ...words.pad, pad: say.reserve }} />
      )}
    </Screen>
  )
}
