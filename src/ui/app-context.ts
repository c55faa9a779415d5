import type { ReadonlySignal, Signal } from '@preact/signals'
import { createContext } from 'preact'
import { useContext } from 'preact/hooks'
import type { MeterReader } from '../device/meter-reader.ts'
import type { Photo } from '../device/photo.ts'
import type { PersonId } from '../plan/ids.ts'
import type { Ledger } from '../projections/ledger.ts'
import type { Lab, LabState } from '../projections/lab.ts'
import type { PlanInForce } from '../projections/plans.ts'
import type { EntryId } from '../record/ids.ts'
import type { DataOf, Kind } from '../record/kinds.ts'
import type { Archive } from './archive.ts'
import type { Install } from './boot/install.ts'
import type { Office } from './office.ts'
import type { RoundKeeper } from './round/round-keeper.ts'
import type { SendProblem } from '../device/problems.ts'
import type { Router } from './router.ts'
import type { Trouble } from './trouble.ts'
import type { Language } from './words/language.ts'
import type { Words } from './words/words.ts'

/** What waits on this phone for the server, and how it stands with the network. */
export interface Sending {
  waiting: number
  /** Entries of others that are being fetched and have not come yet. */
  toCome?: number
  /** Milliseconds since 1970 of the oldest entry that waits. */
  oldestAt?: number | undefined
  concern: 'none' | 'warning' | 'alarm'
  state: 'idle' | 'sending' | 'offline' | 'stopped'
  /** What stopped it. */
  problem?: SendProblem['code'] | undefined
  /** Only people can mend it. */
  isLasting: boolean
}

/** What a screen may ask of the phone. Every promise resolves after the durable write, never before. */
export interface Phone {
  clock: {
    /** Milliseconds since 1970. */
    now(): number
    /** Milliseconds on a clock that never runs backwards while the page lives. */
    mono(): number
    /** Milliseconds until an end that was once seen: a wall clock that is set does not change them while the page lives. */
    left(until: number): number
  }
  /** By whoever has the phone in hand, unless the invented past of a demo laboratory says otherwise. Photos are kept in the same write. */
  append<K extends Kind>(kind: K, data: DataOf<K>, beside?: { by?: PersonId; photos?: readonly Photo[] }): Promise<EntryId>
  /** What is half done: a reading being keyed, an open round. Kept so that a dead battery costs nothing. */
  drafts: {
    get(key: string): Promise<unknown>
    put(key: string, value: unknown): Promise<void>
    remove(key: string): Promise<void>
  }
  sendNow(): void
  /** A name that no other has, for a round. */
  newId(): string
  /** The unsent entries as files that any enrolled device may hand in; none when nothing waits. */
  unsentFiles(): Promise<readonly { name: string; json: string }[]>
  /** Hands in such a file, of whichever phone. */
  handIn(text: string): Promise<HandedIn>
  /** All that can be read here, for a phone whose store is damaged: one entry a line. */
  readableRecord(): Promise<string>
  pins: Pins
}

/** What became of a file of another phone's unsent entries. */
export type HandedIn =
  /** `taken` of `count` are in the record; `aside`: it is of another history of that phone, and kept apart for the supervisor. */
  | { ok: true; phone: string; count: number; taken: number; aside: boolean; why?: string }
  | { ok: false; why: 'notAFile' | 'changed' | 'offline' | 'unknownPhone' | 'refused'; detail?: string }

/** A PIN says who keyed; it is attribution, not a secret. After some wrong tries it asks for a pause, which grows. */
export interface Pins {
  has(person: PersonId): Promise<boolean>
  choose(person: PersonId, pin: string): Promise<void>
  check(person: PersonId, pin: string): Promise<{ ok: true } | { ok: false; triesLeft: number; waitSeconds: number }>
}

export type Theme = 'paper' | 'safelight'

export interface App {
  phone: Phone
  router: Router
  words: ReadonlySignal<Words>
  /** Fetches the words of every room but the first; asked by each screen that is fetched itself. */
  loadWords(): Promise<void>
  language: ReadonlySignal<Language>
  /** Another language, kept on this phone; rejects where its words are not here and cannot be fetched. */
  speak(language: Language): Promise<void>
  /** The fold of the log; a new object each time something came in. */
  lab: ReadonlySignal<{ readonly state: LabState; readonly ledger: Ledger; readonly log: Lab }>
  /** The fold is up to date; while the app starts, it is of some days ago. */
  isWhole: ReadonlySignal<boolean>
  plan: ReadonlySignal<PlanInForce | undefined>
  /** The clock, once a second while the page is seen. */
  now: ReadonlySignal<number>
  /** Who has this phone in hand. Nobody: it is locked. */
  person: Signal<PersonId | null>
  /** The open round and what else is half done. */
  rounds: RoundKeeper
  sending: ReadonlySignal<Sending>
  office: Office
  /** The record below the fold: sealed entries and keys. Fetched when first asked for. */
  archive(): Promise<Archive>
  /** The meter reader behind the camera. Its code is fetched when first asked for; its files, once a person agrees. */
  reader(): Promise<MeterReader>
  theme: Signal<Theme>
  /** A laboratory is being written into the record: how much of it is there. The gate waits until it is whole. */
  settingUp: Signal<{ done: number; of: number } | undefined>
  /** What ails the store, while it does. */
  trouble: Signal<Trouble | undefined>
  /** A new version waits; `apply` reloads into it. Shown only where nothing is half done. */
  update: ReadonlySignal<{ apply(): void } | undefined>
  /** The browser would put the app on the home screen. */
  install: ReadonlySignal<Install | undefined>
}

export const AppContext = createContext<App | null>(null)

export const useApp = (): App => {
  const app = useContext(AppContext)
  if (!app) throw new Error('a screen was drawn outside the app')
  return app
}

export const useWords = (): Words => useApp().words.value
