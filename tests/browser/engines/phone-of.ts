import { Phone } from '../harness.ts'
import { DrivenPhone } from './driven-phone.ts'
import { openFirefox } from './firefox.ts'
import type { Screen } from './screen.ts'
import { openWebKit } from './webkit.ts'

/** A phone, whatever its engine: a browser with a profile of its own, which can really be closed and opened again. */
export interface AnyPhone {
  readonly complaints: string[]
  readonly page: Screen
  /** Runs in every page before the page's own scripts, from the next opening on: what this phone has that the engine has not, or the other way round. */
  before<Given>(work: (given: Given) => void, given: Given): void
  /** The file that is saved when this is done. */
  fileOf(act: () => Promise<void>): Promise<Buffer>
  open(path?: string): Promise<Screen>
  close(): Promise<void>
  end(): Promise<void>
}

const engines: Record<string, (origin: string) => AnyPhone> = {
  // A picture that the browser makes up stands in for the camera, here as in the others.
  chromium: (origin) => new Phone(origin, ['--use-fake-ui-for-media-stream', '--use-fake-device-for-media-stream']),
  firefox: (origin) => new DrivenPhone(origin, openFirefox),
  webkit: (origin) => new DrivenPhone(origin, openWebKit),
}

/** The engine that this run of the tests drives. */
export const engine = process.env['ENGINE'] ?? 'chromium'

export const phoneOf = (origin: string, which = engine): AnyPhone => {
  const make = engines[which]
  if (!make) throw new Error(`ENGINE is one of ${Object.keys(engines).join(', ')}, not “${which}”`)
  return make(origin)
}
