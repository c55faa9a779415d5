import { computed, effect, signal } from '@preact/signals'
import { render } from 'preact'
import { askForBackgroundSend } from './device/background.ts'
import { createClock } from './device/clock.ts'
import { createIdbStore } from './device/idb-store.ts'
import type { Live } from './device/live.ts'
import { webLocks } from './device/locks.ts'
import type { MeterReader } from './device/meter-reader.ts'
import { createNews } from './device/news.ts'
import { openPhone } from './device/open-phone.ts'
import { probeStore } from './device/probe-store.ts'
import { StoreFault } from './device/faults.ts'
import { loadTemporal } from './device/temporal.ts'
import { createTrustScript } from './device/trusted.ts'
import { registerServiceWorker, type Updates } from './device/updates.ts'
import type { PersonId } from './plan/ids.ts'
import { MixingClock } from './rounds/mixing-clock.ts'
import { AppContext, type App } from './ui/app-context.ts'
import { watchIdle } from './ui/boot/auto-lock.ts'
import { keepInstall } from './ui/boot/install.ts'
import { emptyLab, keepLab } from './ui/boot/keep-lab.ts'
import { keepLanguage, openLanguage } from './ui/boot/language.ts'
import { officeOf } from './ui/boot/office-of.ts'
import { phoneOf } from './ui/boot/phone-of.ts'
import { sendingOf } from './ui/boot/sending-of.ts'
import { openTheme } from './ui/boot/theme.ts'
import { fetchFirst, Gate } from './ui/gate.tsx'
import { isInstalled } from './ui/installed.ts'
import { openRoundKeeper } from './ui/round/round-keeper.ts'
import { openRouter } from './ui/router.ts'
import './ui/theme/tokens.css'
import './ui/theme/base.css'
import './ui/theme/large-text.css'
import type { Trouble } from './ui/trouble.ts'
import type { Language } from './ui/words/language.ts'
import { firstWords, loadWords } from './ui/words/words.ts'

declare const __APP_VERSION__: string

const theme = openTheme()
const language = openLanguage()
const trouble = signal<Trouble | undefined>(undefined)
const update = signal<{ apply(): void } | undefined>(undefined)
const install = keepInstall()
const updates = { current: undefined as Updates | undefined }

/** The one place where a fault of ours ends up: said on the screen where it touches the record, and in the console, never swallowed. */
const onFault = (thrown: unknown): void => {
  if (thrown instanceof StoreFault) trouble.value = thrown.code
  console.error(thrown)
}
addEventListener('unhandledrejection', (event) => onFault(event.reason))

const clock = createClock()
const randomBytes = (count: number): Uint8Array<ArrayBuffer> => crypto.getRandomValues(new Uint8Array(count))
const after = (milliseconds: number, work: () => void): (() => void) => {
  const timer = setTimeout(work, milliseconds)
  return () => clearTimeout(timer)
}

const store = createIdbStore({
  onBlocked: () => (trouble.value = 'blocked'),
  // The next use opens it again; whether that works is found out now, not under somebody's reading.
  onLost: () => void store.head().catch(onFault),
  onUnreadable: () => (trouble.value = 'unreadable'),
})

const device = openPhone({
  store,
  clock,
  locks: webLocks(),
  news: createNews(),
  fetch: (path, init) => fetch(path, init),
  randomBytes,
  chance: Math.random,
  after,
  about: async () => ({
    ...(await import('./device/storage.ts').then(async ({ readStorage, storageReport }) => storageReport(await readStorage(navigator.storage)))),
    installed: isInstalled(),
    app: __APP_VERSION__,
  }),
  onSaved: () => void askForBackgroundSend(updates.current?.registration()),
  onFault,
})

const start = async (): Promise<void> => {
  await loadTemporal()
  const skew = signal(0)
  const measure = async (): Promise<void> => {
    skew.value = (await device.skew())?.ms ?? 0
  }
  const measured = measure().catch(onFault)
  /** The laboratory's time: entries are ordered by it, so everything that is compared with them is too. */
  const labNow = (): number => clock.wall() + skew.value

  let naps = 0
  document.addEventListener('visibilitychange', () => (naps += document.visibilityState === 'hidden' ? 1 : 0))
  const mixing = new MixingClock({ now: labNow, mono: () => clock.monotonic(), naps: () => naps })

  const person = signal<PersonId | null>(null)
  const phone = phoneOf({ device, clock, now: labNow, person: () => person.value, newId: () => crypto.randomUUID(), mixing, onTrouble: (it) => (trouble.value = it) })
  const officeNow = officeOf({
    device,
    fragment: location.hash,
    now: labNow,
    onEnrolled: () => {
      // The code has served; it does not stay in the address.
      history.replaceState(history.state, '', location.pathname)
      import('./device/storage.ts').then(({ askToPersist }) => askToPersist(navigator.storage)).catch(onFault)
      device.sender.nudge('start')
    },
  })
  let isDrawn!: () => void
  const drawn = new Promise<void>((done) => (isDrawn = done))
  const reading = Promise.all([
    officeNow,
    openRoundKeeper(phone.drafts),
    keepLab(device.book, labNow, onFault, drawn).catch((thrown: unknown) => {
      onFault(thrown)
      return emptyLab()
    }),
    measured,
    // The screen that stands before all others. A fault is told where it is drawn.
    officeNow.then(({ enrolled }) => fetchFirst(enrolled.value.state === 'enrolled').catch(() => undefined)),
  ])
  // Asked for behind all that is read, so that nothing waits for its write.
  const probing = probeStore(store, Array.from(randomBytes(8)).join()).catch((thrown: unknown) => {
    onFault(thrown)
    trouble.value = 'unavailable'
  })
  const [office, rounds, { lab, whole }] = await reading
  await probing
  const isWhole = signal(false)
  whole.then(() => (isWhole.value = true)).catch(onFault)
  const now = signal(labNow())
  // What was saved since the last tick would lie ahead of `now`, and not count on a page that is worked out by the minute.
  lab.subscribe(() => (now.value = labNow()))
  const minute = computed(() => Math.floor(now.value / 60_000))
  const sending = signal(sendingOf(device.sender.state))
  device.sender.subscribe((state) => {
    sending.value = sendingOf(state)
    void measure().catch(onFault)
  })

  const trustScript = createTrustScript()
  let reader: MeterReader | undefined
  const words = signal(firstWords)
  const say = async (to: Language): Promise<void> => {
    words.value = await loadWords(to)
    language.value = to
    document.documentElement.lang = to
  }
  // Whoever reads another language has its words on the phone; where they cannot be had, English is better than nothing.
  if (language.value !== 'en')
    await say(language.value).catch((thrown: unknown) => {
      language.value = 'en'
      onFault(thrown)
    })
  const app: App = {
    phone,
    router: openRouter(),
    words,
    loadWords: async () => {
      words.value = await loadWords(language.value)
    },
    language,
    speak: async (to) => {
      await say(to)
      keepLanguage(to)
    },
    lab,
    isWhole,
    plan: computed(() => (minute.value, lab.value.log.plan(labNow()))),
    now,
    person,
    rounds,
    sending,
    office,
    reader: async () => {
      reader ??= (await import('./ui/boot/reader-of.ts')).readerOf(trustScript)
      return reader
    },
    archive: async () => (await import('./ui/boot/archive-of.ts')).archiveOf(device),
    theme,
    settingUp: signal(undefined),
    trouble,
    update,
    install,
  }

  /** Told at once of what other phones have sent, while somebody looks. */
  let live: Promise<Live> | undefined
  const follow = async (): Promise<Live> => (await import('./device/live.ts')).openLive({ door: device.door, onNews: () => device.sender.nudge('live'), after, chance: Math.random })
  const seen = (): void => {
    const isVisible = document.visibilityState === 'visible'
    now.value = labNow()
    device.sender.setVisible(isVisible)
    if (isVisible && app.office.enrolled.value.state === 'enrolled') live ??= follow()
    else {
      live?.then((it) => it.stop()).catch(onFault)
      live = undefined
    }
  }
  document.addEventListener('visibilitychange', seen)
  effect(() => {
    app.office.enrolled.value
    seen()
  })
  setInterval(() => {
    if (document.visibilityState === 'visible') now.value = labNow()
  }, 1000)
  addEventListener('online', () => device.sender.nudge('online'))
  watchIdle(app)

  render(
    <AppContext.Provider value={app}>
      <Gate />
    </AppContext.Provider>,
    document.getElementById('app')!,
  )
  // Behind the first frame, or after a while where nobody looks at any.
  requestAnimationFrame(() => setTimeout(isDrawn))
  setTimeout(isDrawn, 500)
  await whole
  // While a PIN is keyed, the first screen behind it comes.
  if (app.office.enrolled.value.state === 'enrolled') Promise.all([app.loadWords(), import('./ui/app.tsx')]).catch(() => undefined)

  // What speaks for a device is not fetched before there is one.
  if (app.office.enrolled.value.state !== 'none') device.sender.nudge('start')
  updates.current = await registerServiceWorker({ trustScript, reload: () => location.reload(), onRefused: (cause) => console.warn(cause) })
  // When everything else is there: nobody has put the phone away yet.
  import('./ui/boot/notices.ts').then(({ startCalls }) => startCalls(app, () => updates.current?.registration())).catch(onFault)
  import('./ui/labels/wedge.ts').then(({ startWedge }) => startWedge(app)).catch(onFault)
  updates.current.onWaiting(() => (update.value = { apply: () => updates.current?.apply() }))
  navigator.serviceWorker?.addEventListener('message', ({ data }: MessageEvent<{ type?: unknown; path?: unknown } | null>) => {
    if (data?.type === 'show' && typeof data.path === 'string') app.router.go(data.path)
  })
}

start().catch((thrown: unknown) => {
  onFault(thrown)
  // Nothing is drawn yet: the bare sentence is better than a black screen.
  document.getElementById('app')!.textContent = firstWords.shell.fault.more
})
