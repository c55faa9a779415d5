import { useMemo } from 'preact/hooks'
import type { LabPlan } from '../../plan/lab-plan.ts'
import { shiftAt } from '../../plan/shift-time.ts'
import { useApp, useWords } from '../app-context.ts'
import { timeText } from '../format.ts'
import { Banner, Empty } from '../parts/banner.tsx'
import { Screen } from '../screen.tsx'
import { LeftBehindCard } from '../now/left-behind-card.tsx'
import { PhonesCard } from '../shift/phones-card.tsx'
import { useWakeLock } from '../wake-lock.ts'
import { BoardMachine } from './board-machine.tsx'
import { MixingCard } from './mixing-card.tsx'
import { ShiftSoFar } from './shift-so-far.tsx'
import './board.css'

/** A phone not heard from for so long is named. */
const silentMilliseconds = 60 * 60_000

/** The whole laboratory on the desk: every machine with what is held, out, late and due. It follows the record by itself and asks for nobody's name. */
export const Board = () => {
  const { plan } = useApp()
  const words = useWords()
  const inForce = plan.value?.plan
  if (!inForce) return <Screen title={words.board.title}><Empty title={words.now.noPlan.title}>{words.now.noPlan.more}</Empty></Screen>
  return <Known plan={inForce} />
}

const Known = ({ plan }: { plan: LabPlan }) => {
  const { lab, now, sending } = useApp()
  const words = useWords()
  useWakeLock(true)
  const minute = Math.floor(now.value / 60_000)
  const shift = useMemo(() => shiftAt(plan, now.value), [plan, minute])
  const newest = lab.value.ledger.lines.findLast(({ kind }) => kind !== 'plan')?.time
  const { state } = sending.value
  return (
    <Screen
      title={words.board.title}
      wide
      meta={[timeText(now.value, plan.timeZone), shift.shift.name, newest === undefined ? '' : words.board.newest(timeText(newest, plan.timeZone))].filter(Boolean).join(' · ')}
    >
      {state === 'offline' || state === 'stopped' ? <Banner kind="warn" title={words.board.stale} /> : null}
      <div class="board">
        <div class="board-machines">{plan.machines.map((machine) => <BoardMachine key={machine.id} machine={machine} plan={plan} />)}</div>
        <div class="board-side">
          <LeftBehindCard plan={plan} />
          <MixingCard plan={plan} />
          <ShiftSoFar plan={plan} span={shift} />
          <PhonesCard plan={plan} since={now.value - silentMilliseconds} />
        </div>
      </div>
    </Screen>
  )
}
