import type { ComponentType } from 'preact'
import { useEffect, useErrorBoundary } from 'preact/hooks'
import { useApp, useWords } from './app-context.ts'
import { useFault } from './fault.tsx'
import { lazy } from './lazy.tsx'
import { Now } from './now/now.tsx'
import { Button } from './parts/button.tsx'
import { BenchIcon, BoardIcon, NowIcon, RoundIcon, ShiftIcon, TrendsIcon } from './parts/icons.tsx'
import { Screen } from './screen.tsx'

const places = [
  ['now', NowIcon],
  ['round', RoundIcon],
  ['bench', BenchIcon],
  ['trends', TrendsIcon],
  ['shift', ShiftIcon],
  // Where there is room for it.
  ['board', BoardIcon],
] as const

/** Every screen by the first word of its address. */
const screens: Record<string, ComponentType> = {
  now: Now,
  board: lazy(() => import('./board/board.tsx').then((it) => it.Board)),
  machine: lazy(() => import('./now/machine-screen.tsx').then((it) => it.MachineScreen)),
  station: lazy(() => import('./now/station.tsx').then((it) => it.StationScreen)),
  round: lazy(() => import('./round/round.tsx').then((it) => it.Round)),
  check: lazy(() => import('./round/check-screen.tsx').then((it) => it.CheckScreen)),
  exception: lazy(() => import('./exception/exception-screen.tsx').then((it) => it.ExceptionScreen)),
  bench: lazy(() => import('./bench/bench.tsx').then((it) => it.Bench)),
  trends: lazy(() => import('./trends/trends.tsx').then((it) => it.Trends)),
  strip: lazy(() => import('./strip/strip-screen.tsx').then((it) => it.StripScreen)),
  shift: lazy(() => import('./shift/shift.tsx').then((it) => it.ShiftScreen)),
  record: lazy(() => import('./record/record-screen.tsx').then((it) => it.RecordScreen)),
  menu: lazy(() => import('./menu/menu.tsx').then((it) => it.Menu)),
  scan: lazy(() => import('./labels/scan-screen.tsx').then((it) => it.ScanScreen)),
  at: lazy(() => import('./labels/at-screen.tsx').then((it) => it.AtScreen)),
  splice: lazy(() => import('./splice/splice-screen.tsx').then((it) => it.SpliceScreen)),
  method: lazy(() => import('./method/method-screen.tsx').then((it) => it.MethodScreen)),
  mixing: lazy(() => import('./mixing/mixing-screen.tsx').then((it) => it.MixingScreen)),
  silver: lazy(() => import('./silver/silver-screen.tsx').then((it) => it.SilverScreen)),
  replenish: lazy(() => import('./replenish/replenish-screen.tsx').then((it) => it.ReplenishScreen)),
  waste: lazy(() => import('./waste/waste-screen.tsx').then((it) => it.WasteScreen)),
  response: lazy(() => import('./response/response-screen.tsx').then((it) => it.ResponseScreen)),
  safety: lazy(() => import('./safety/safety-screen.tsx').then((it) => it.SafetyScreen)),
  emergency: lazy(() => import('./emergency/emergency.tsx').then((it) => it.Emergency)),
}

const NotFound = lazy(() => import('./not-found.tsx').then((it) => it.NotFound))

/** Which of the five places a screen belongs to. */
const homeOf: Record<string, string> = { machine: 'now', check: 'round', exception: 'round', strip: 'bench', station: 'now', scan: 'now', at: 'now', splice: 'now', mixing: 'bench', method: 'bench', silver: 'bench', replenish: 'bench', waste: 'bench', response: 'round', record: 'shift' }

export const AppShell = () => {
  const { router } = useApp()
  const words = useWords()
  const { place, path } = router.here.value
  const [fault, clearFault] = useErrorBoundary()
  // A screen that failed does not stand in the way of the others.
  useEffect(clearFault, [path])
  const Here = screens[place]
  return (
    <div class="app">
      {fault ? <Fault fault={fault} onAgain={clearFault} /> : Here ? <Here key={path} /> : <NotFound />}
      <nav class="places" aria-label={words.shell.placesName}>
        <ul>
          {places.map(([name, Icon]) => (
            <li key={name} class={name === 'board' ? 'desk-only' : undefined}>
              <a href={`/${name}`} aria-current={(homeOf[place] ?? place) === name ? 'page' : undefined}>
                <Icon />
                {words.shell.places[name]}
              </a>
            </li>
          ))}
        </ul>
      </nav>
    </div>
  )
}

const Fault = ({ fault, onAgain }: { fault: unknown; onAgain(): void }) => {
  const { title, again, body } = useFault(fault)
  return <Screen title={title} next={<Button kind="go" onPress={onAgain}>{again}</Button>}>{body}</Screen>
}
