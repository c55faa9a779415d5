import { computed, signal } from '@preact/signals'
import { render } from 'preact'
import 'temporal-polyfill/global'
import { Lab } from '../../src/projections/lab.ts'
import type { Arrived } from '../../src/projections/line.ts'
import { AppContext, type App, type Theme } from '../../src/ui/app-context.ts'
import { StoreFault } from '../../src/device/faults.ts'
import { AppShell } from '../../src/ui/app.tsx'
import { Gate } from '../../src/ui/gate.tsx'
import { openRoundKeeper } from '../../src/ui/round/round-keeper.ts'
import { openRouter } from '../../src/ui/router.ts'
import '../../src/ui/theme/tokens.css'
import '../../src/ui/theme/base.css'
import '../../src/ui/theme/large-text.css'
import type { Language } from '../../src/ui/words/language.ts'
import { loadWords } from '../../src/ui/words/words.ts'
import { archive } from './archive.ts'
import { Log } from './log.ts'
import { office } from './office.ts'
import { pressed } from './pressed.ts'
import { scenes } from './scenes.ts'

/** Shows one scene: `/?scene=now-quiet&theme=safelight`. Entries made by the thumb are folded in like saved ones, and nothing else is kept. */
const query = new URLSearchParams(location.search)
const scene = scenes[query.get('scene') ?? 'now-quiet']
if (!scene) throw new Error('no such scene')
const start = scene.at
const opened = performance.now()
const clockNow = (): number => Math.floor(start + (performance.now() - opened))

const log = new Log(start)
const extra = (await scene.log(log)) ?? {}
const lab = new Lab()
lab.add(log.entries)

const folded = signal({ state: lab.state, ledger: lab.ledger, log: lab })
const now = signal(start)
setInterval(() => (now.value = clockNow()), 1000)
const theme = signal<Theme>(query.get('theme') === 'safelight' ? 'safelight' : 'paper')
document.documentElement.dataset['theme'] = theme.value
const drafts = new Map<string, unknown>(Object.entries(scene.drafts?.(extra) ?? {}))

history.replaceState(null, '', scene.path(extra))

const keepDrafts: App['phone']['drafts'] = {
  get: async (key) => drafts.get(key),
  put: async (key, value) => void drafts.set(key, structuredClone(value)),
  remove: async (key) => void drafts.delete(key),
}

const language = signal<Language>(query.get('language') === 'es' ? 'es' : 'en')
const words = signal(await loadWords(language.value))
document.documentElement.lang = language.value

const app: App = {
  phone: {
    clock: { now: clockNow, mono: () => performance.now(), left: (until) => until - clockNow() },
    append: async (kind, data) => {
      if (scene.refuses) throw new StoreFault(scene.refuses, 'the stage')
      const next = new Log(clockNow())
      next.entries.push(...log.entries)
      const id = next.add(kind, 0, data, app.person.value)
      const added = next.entries.at(-1) as Arrived
      log.entries.push(added)
      lab.add([added])
      folded.value = { state: lab.state, ledger: lab.ledger, log: lab }
      now.value = clockNow()
      return id
    },
    drafts: keepDrafts,
    sendNow: () => undefined,
    newId: () => `round-${log.entries.length}`,
    unsentFiles: async () => [],
    handIn: async () => ({ ok: false, why: 'offline' }),
    readableRecord: async () => '',
    pins: { has: async () => true, choose: async () => undefined, check: async (_, pin) => (pin === '1234' ? { ok: true } : { ok: false, triesLeft: 3, waitSeconds: 0 }) },
  },
  router: openRouter(),
  words,
  loadWords: () => (scene.lacks === 'time' ? new Promise(() => undefined) : scene.lacks === 'file' ? Promise.reject(new TypeError('Failed to fetch')) : Promise.resolve()),
  language,
  speak: async (to) => {
    words.value = await loadWords(to)
    language.value = to
    document.documentElement.lang = to
  },
  lab: scene.lacks === 'sense' ? computed(() => { throw new TypeError("Cannot read properties of undefined (reading 'recent')") }) : folded,
  plan: computed(() => (folded.value, lab.plan(now.value))),
  now,
  person: signal(scene.person === undefined ? ('ada' as never) : scene.person),
  sending: signal(scene.sending ?? { waiting: 0, concern: 'none', state: 'idle', isLasting: false }),
  office: office(start),
  archive: async () => archive(() => lab, log),
  reader: () => Promise.reject(new Error('the pictures have no meter reader')),
  rounds: await openRoundKeeper(keepDrafts),
  theme,
  settingUp: signal(undefined),
  isWhole: signal(true),
  trouble: signal(scene.trouble),
  install: signal(scene.install ? { ask: async () => undefined } : undefined),
  update: signal(scene.update ? { apply: () => undefined } : undefined),
}

render(
  <AppContext.Provider value={app}>
    {scene.gate ? <Gate /> : <AppShell />}
  </AppContext.Provider>,
  document.getElementById('app')!,
)

await pressed(scene.press ?? []).finally(() => (document.documentElement.dataset['staged'] = ''))
