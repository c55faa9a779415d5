import { createCanvas } from '@napi-rs/canvas'
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import sharp from 'sharp'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Pixels } from '../../src/reader/picture.ts'
import { blurred, useless, type Useless } from '../reader/pictures.ts'
import { scene, type Scene } from '../training/scene.ts'
import { allSent, found, goTo, Laboratory, Phone, press, readyForNoNetwork, save, unlock } from './harness.ts'

const operator = 'Marta Quintela'
const check = '/check/neg-1-fix-ph'
const shown = '4.58'
const openName = 'Read the display with the camera'

const jpegOf = ({ width, height, data }: Pixels): Buffer => {
  const canvas = createCanvas(width, height)
  const context = canvas.getContext('2d')
  const image = context.createImageData(width, height)
  image.data.set(data)
  context.putImageData(image, 0, 0)
  return canvas.toBuffer('image/jpeg', 92)
}

/** The header of a JPEG of 8,200 × 6,200 pixels and nothing after it: what is refused by its size must not need its pixels. */
const hugeJpeg = Buffer.from([0xff, 0xd8, 0xff, 0xc0, 0, 17, 8, 6200 >> 8, 6200 & 255, 8200 >> 8, 8200 & 255, 3, 1, 0x22, 0, 2, 0x11, 1, 3, 0x11, 1])

/** Drags one part of the guide box to a place on the picture, in shares of it. */
const drag = async (page: Page, part: string, to: { x: number; y: number }): Promise<void> => {
  // Before its first frame the picture has another size.
  await page.waitForFunction(() => (document.querySelector<HTMLVideoElement>('.meter-picture video')?.videoWidth ?? 0) > 0)
  await page.getByRole('button', { name: new RegExp(`^${part}`) }).hover()
  const picture = (await page.locator('.meter-picture').boundingBox())!
  const grip = (await page.getByRole('button', { name: new RegExp(`^${part}`) }).boundingBox())!
  await page.mouse.move(grip.x + grip.width / 2, grip.y + grip.height / 2)
  await page.mouse.down()
  await page.mouse.move(picture.x + to.x * picture.width, picture.y + to.y * picture.height, { steps: 4 })
  await page.mouse.up()
}

describe('reading a display with the camera, on a phone without a network', () => {
  const lab = new Laboratory()
  let phone: Phone
  let drawn: Scene
  let camera: string[]

  beforeAll(async () => {
    await lab.start()
    phone = new Phone(lab.origin)
    drawn = await scene(910_012, { style: 'lcd', text: shown })
    // Motion JPEG is one JPEG after the other.
    const film = join(phone.profile, 'display.mjpeg')
    const frame = jpegOf(drawn.pixels)
    writeFileSync(film, Buffer.concat([frame, frame]))
    camera = ['--use-fake-ui-for-media-stream', '--use-fake-device-for-media-stream', `--use-file-for-fake-video-capture=${film}`]
  })
  afterAll(async () => {
    await phone.end()
    await lab.end()
  })

  it('asks before it fetches, says how much, fetches once and says how far it is', async () => {
    const page = await phone.open(`/#enrol=${lab.code}`, camera)
    await found(page, 'Rosa Kern')
    await readyForNoNetwork(page)
    const asked: string[] = []
    page.context().on('request', (request) => asked.push(new URL(request.url()).pathname))
    await goTo(page, check)
    await page.getByRole('button', { name: openName }).click()
    await page.getByText('Fetch the meter reader?').waitFor()
    expect(asked.filter((path) => path.startsWith('/reader/'))).toEqual([])
    const fetchButton = page.getByRole('button', { name: /^Fetch \d\.\d MB$/ })
    expect(Number(/[\d.]+/.exec(await fetchButton.innerText())![0])).toBeLessThan(3)
    await fetchButton.click()
    await page.locator('.meter-picture').waitFor({ timeout: 60_000 })
    expect(asked.filter((path) => path.endsWith('.traineddata')).length).toBeGreaterThanOrEqual(1)
    await press(page, 'Key it instead')
  })

  it('reads what the camera sees with the server stopped; a person takes it, and the entry says so', async () => {
    await phone.close()
    await lab.stop()
    const page = await phone.open('/', camera)
    await unlock(page, operator)
    await goTo(page, check)
    await page.getByRole('button', { name: openName }).click()
    await page.locator('.meter-picture').waitFor({ timeout: 60_000 })
    expect(await page.getByText('Fetch the meter reader?').count()).toBe(0)

    const { box, pixels } = drawn
    const loose = { x: box.x - box.width * 0.2, y: box.y - box.height * 0.2, width: box.width * 1.4, height: box.height * 1.4 }
    const share = (x: number, y: number): { x: number; y: number } => ({ x: x / pixels.width, y: y / pixels.height })
    // The corner first, so that the box is the right size to be moved.
    const guide = await page.locator('.meter-guide').evaluate((it) => {
      const [own, whole] = [it.getBoundingClientRect(), it.parentElement!.getBoundingClientRect()]
      return { x: (own.x - whole.x) / whole.width, y: (own.y - whole.y) / whole.height }
    })
    await drag(page, 'Size of the guide box', { x: guide.x + loose.width / pixels.width, y: guide.y + loose.height / pixels.height })
    await drag(page, 'Guide box', share(loose.x + loose.width / 2, loose.y + loose.height / 2))
    await page.getByRole('button', { name: `Take ${shown}` }).waitFor()
    await page.locator('canvas.cut-out').first().waitFor()
    await page.getByText('certain', { exact: true }).waitFor()
    if (process.env['SHOTS']) await page.screenshot({ path: `${process.env['SHOTS']}/camera.png` })
    await press(page, `Take ${shown}`)

    await expect.poll(() => page.locator('output.keyed').innerText()).toBe(shown)
    await page.locator('.read-line canvas').waitFor()
    if (process.env['SHOTS']) await page.screenshot({ path: `${process.env['SHOTS']}/camera-taken.png` })
    await save(page)
  })

  it('remembers the display: the same box stands there the next time; a mended number says so', async () => {
    const { page } = phone
    await goTo(page, '/now')
    await goTo(page, check)
    await page.getByRole('button', { name: openName }).click()
    await page.getByRole('button', { name: `Take ${shown}` }).waitFor()
    await press(page, `Take ${shown}`)
    await page.locator('.read-line canvas').waitFor()
    // Mended: the last figure keyed anew.
    await page.getByRole('button', { name: 'Erase the last figure' }).click()
    await page.getByRole('group', { name: 'Number pad' }).getByRole('button', { name: '6', exact: true }).click()
    await page.getByText(`The camera read ${shown}; you mended it.`).waitFor()
    await save(page)
  })

  it('refuses what is no display, each with its reason and what to do', async () => {
    const { page } = phone
    await goTo(page, '/check/neg-1-dev-temp')
    await page.getByRole('button', { name: openName }).click()
    await page.locator('.meter-picture').waitFor()
    const choose = (name: string, buffer: Buffer): Promise<void> => page.locator('input[type=file]').setInputFiles({ name, mimeType: 'image/jpeg', buffer })
    const picture = (kind: Useless): Buffer => jpegOf(useless(kind, 1))
    for (const [buffer, sentence] of [
      [picture('black'), /^Too dark/],
      [picture('bare wall'), /^Nothing stands in the box/],
      [jpegOf(blurred(drawn.pixels, Math.round(drawn.box.height * 0.15))), /^Not sharp/],
      [picture('words'), /^(No number found|Nothing stands)/],
      [hugeJpeg, /more than 50 megapixels/],
      [Buffer.from('a letter, not a picture'), /no picture that the phone can open/],
    ] as const) {
      await choose('picture.jpg', buffer)
      await page.locator('dialog').getByText(sentence).first().waitFor()
      expect(await page.getByRole('button', { name: /^Take \d/ }).count()).toBe(0)
    }
    await press(page, 'Key it instead')
  })

  it('lights the lamp only after the warning about open film', async () => {
    const { page } = phone
    // The fake camera has no lamp; this one writes down what is asked of it.
    await page.evaluate(() => {
      const lamp: unknown[] = []
      Object.assign(globalThis, { lamp })
      MediaStreamTrack.prototype.getCapabilities = () => ({ torch: true }) as MediaTrackCapabilities
      MediaStreamTrack.prototype.applyConstraints = (asked) => (lamp.push(asked), Promise.resolve())
    })
    const asked = (): Promise<unknown> => page.evaluate(() => (globalThis as unknown as { lamp: unknown }).lamp)
    await page.getByRole('button', { name: openName }).click()
    await press(page, 'Lamp on')
    await page.getByText(/It fogs open film/).waitFor()
    expect(await asked()).toEqual([])
    await press(page, 'Leave it off')
    await press(page, 'Lamp on')
    await press(page, 'All film is covered: lamp on')
    await page.getByRole('button', { name: 'Lamp off' }).waitFor()
    expect(await asked()).toEqual([{ advanced: [{ torch: true }] }])
    await press(page, 'Key it instead')
  })

  it('without leave for the camera says what to do, and reads a picture from the library', async () => {
    await phone.close()
    const page = await phone.open('/', ['--use-fake-device-for-media-stream', '--deny-permission-prompts'])
    await unlock(page, operator)
    await goTo(page, check)
    await page.getByRole('button', { name: openName }).click()
    await page.getByText(/^The camera is not allowed/).waitFor()
    if (process.env['SHOTS']) await page.screenshot({ path: `${process.env['SHOTS']}/camera-denied.png` })
    await page.getByRole('button', { name: 'Try again' }).click()
    await page.getByText(/^The camera is not allowed/).waitFor()
    // As a phone's own camera keeps it: larger than needed, and telling when and by what it was taken.
    const large = await sharp(jpegOf(drawn.pixels)).resize(2400).withExif({ IFD0: { Make: 'A phone', DateTime: '2026:01:01 00:00:00' } }).jpeg().toBuffer()
    expect((await sharp(large).metadata()).exif).toBeDefined()
    await page.locator('input[type=file]').setInputFiles({ name: 'display.jpg', mimeType: 'image/jpeg', buffer: large })
    await page.locator('.meter-picture canvas').waitFor()
    // The box stands where it stood for the live picture, which this one is.
    await press(page, `Take ${shown}`)
    await page.locator('.read-line canvas').waitFor()
    await save(page)
  })

  it('has no camera for a value that was noted on paper', async () => {
    const { page } = phone
    await goTo(page, '/now')
    await goTo(page, '/check/neg-1-dev-temp')
    await press(page, 'Noted…')
    await page.getByRole('button', { name: /I note it now/ }).click()
    await page.getByRole('heading', { name: 'Now', level: 1 }).waitFor()
    await goTo(page, '/check/neg-1-dev-temp')
    await page.getByRole('group', { name: 'Number pad' }).waitFor()
    expect(await page.getByRole('button', { name: openName }).count()).toBe(0)
  })

  it('sends the picture after its entry, which says read, what was read, and what was mended', async () => {
    await phone.close()
    await lab.start()
    const page = await phone.open()
    await unlock(page, operator)
    await allSent(page)
    const record = new Database(join(lab.folder, 'bathkeeper.db'), { readonly: true })
    interface Body { data: { check?: string; how?: string; keyed?: string; seen?: unknown }; blobs: string[] }
    const bodies = (record.prepare("select body from entries where kind = 'reading' order by seq").all() as { body: string }[]).map(({ body }) => JSON.parse(body) as Body)
    const withPicture = bodies.filter(({ blobs }) => blobs.length > 0)
    expect(withPicture.map(({ data: { how, keyed, seen } }) => ({ how, keyed, seen }))).toEqual([
      { how: 'read', keyed: shown, seen: { text: shown, certain: true } },
      { how: 'keyed', keyed: '4.56', seen: { text: shown, certain: true } },
      { how: 'read', keyed: shown, seen: { text: shown, certain: true } },
    ])
    const kept = (): number => (record.prepare('select count(*) as count from blobs').get() as { count: number }).count
    await expect.poll(kept, { timeout: 30_000 }).toBe(new Set(withPicture.flatMap(({ blobs }) => blobs)).size)
    for (const { data } of record.prepare('select data from blobs').all() as { data: Buffer }[]) {
      const { exif, width, height } = await sharp(data).metadata()
      expect(exif).toBeUndefined()
      expect(Math.max(width, height)).toBeLessThanOrEqual(1600)
    }
    record.close()
  })

  it('broke no content policy and failed nowhere', () => {
    expect(phone.complaints).toEqual([])
  })
})
