/** Draws the pictures that a browser shows before it installs the app, anew after a change of the look: `npx tsx tests/shots/manifest-pictures.ts`, once the stage is built. */
import { chromium } from 'playwright-core'
import sharp from 'sharp'
import { executablePath } from '../browser/harness.ts'
import { serveStage } from './serve-stage.ts'

const pictures = [
  { file: 'screen-now.png', scene: 'now-out', width: 390, height: 844 },
  { file: 'screen-reading.png', scene: 'check-ph-keyed', width: 390, height: 844 },
  { file: 'screen-board.png', scene: 'board', width: 1366, height: 768 },
] as const

const { origin, server } = await serveStage()
const browser = await chromium.launch({ executablePath, args: ['--no-sandbox', '--hide-scrollbars'] })
for (const { file, scene, width, height } of pictures) {
  const page = await browser.newPage({ viewport: { width, height } })
  await page.goto(`${origin}/?scene=${scene}`)
  await page.locator('main').waitFor()
  await page.evaluate(() => document.fonts.ready)
  await page.waitForTimeout(300)
  await sharp(await page.screenshot()).png({ palette: true, colours: 64, effort: 10 }).toFile(new URL(`../../icons/${file}`, import.meta.url).pathname)
  await page.close()
}
await browser.close()
server.close()
