import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Capability } from '../../src/ui/menu/capabilities.ts'
import { menu } from '../../src/ui/words/en/menu.ts'
import { writeDisplayPicture } from './display-picture.ts'
import { allSent, found, goTo, Laboratory, Phone, press, save, saveReading, unlock } from './harness.ts'

/** Taken from the page before it begins: what one phone or another has not. */
const poorer = (): void => {
  const drop = (from: object, ...names: string[]): void => names.forEach((name) => Reflect.deleteProperty(from, name))
  drop(Navigator.prototype, 'locks', 'vibrate', 'wakeLock', 'setAppBadge', 'clearAppBadge', 'storage')
  drop(globalThis, 'BarcodeDetector', 'Notification', 'OffscreenCanvas', 'Temporal', 'requestIdleCallback')
  drop(ServiceWorkerRegistration.prototype, 'sync')
  drop(MediaDevices.prototype, 'getSupportedConstraints')
  drop(MediaStreamTrack.prototype, 'getCapabilities')
  drop(AbortSignal, 'any')
  // How the app finds out whether the engine has SIMD.
  WebAssembly.validate = () => false
}

const lacked: readonly Capability[] = ['persisted', 'locks', 'lamp', 'labels', 'simd', 'vibration', 'wakeLock', 'backgroundSync', 'notices', 'badge']

describe('a phone that lacks whatever a browser may lack', () => {
  const lab = new Laboratory()
  let phone: Phone

  beforeAll(async () => {
    await lab.start()
    phone = new Phone(lab.origin)
    const page = await phone.open('/setup')
    await page.context().addInitScript(poorer)
    await page.goto(`${lab.origin}/#enrol=${lab.code}`)
    await page.reload()
    await found(page, 'Marta Quintela')
  })
  afterAll(async () => {
    await phone.end()
    await lab.end()
  })

  it('says of each what is lacking and what follows', async () => {
    const { page } = phone
    await goTo(page, '/menu/phone')
    for (const capability of lacked) await page.getByText(menu.phone.checks[capability].without).waitFor()
  })

  it('walks a check, reads a display from a picture with the plain reader, and keeps the picture', async () => {
    const { page } = phone
    await goTo(page, '/round')
    await page.getByRole('heading', { level: 1 }).waitFor()
    const picture = join(lab.folder, 'display.jpg')
    await writeDisplayPicture(picture, '4.58')
    const asked: string[] = []
    page.context().on('request', (request) => asked.push(new URL(request.url()).pathname))
    await goTo(page, '/check/neg-1-fix-ph')
    await press(page, 'Read the display with the camera')
    await press(page, /^Fetch \d/)
    await page.locator('input[type=file]').setInputFiles(picture)
    await press(page, 'Take 4.58')
    await page.locator('.read-line canvas').waitFor()
    expect(asked.filter((path) => /tesseract-core/.test(path)).every((path) => !path.includes('simd'))).toBe(true)
    await save(page)
    await allSent(page)
  })

  it('sends what was saved without the server when the network comes back, with nothing to wake it', async () => {
    const { page } = phone
    await lab.stop()
    await saveReading(page, '21.0', 'neg-1-dev-temp')
    await lab.start()
    await page.evaluate(() => dispatchEvent(new Event('online')))
    await allSent(page)
  })

  it('starts again, and broke no content policy on the way', async () => {
    const { page } = phone
    await page.goto(lab.origin)
    await unlock(page, 'Marta Quintela')
    expect(phone.complaints).toEqual([])
  })
})
