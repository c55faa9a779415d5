/** One or a few scenes, quickly: `npx tsx tests/shots/look.mts now-quiet,now-out 360x740 paper,safelight /tmp/out.png` */
import { chromium } from 'playwright-core'
import sharp from 'sharp'
import { serveStage } from './serve-stage.ts'

const [names = '', sizes = '360x740', themes = 'paper,safelight', out = '/tmp/look.png', full] = process.argv.slice(2)
const { origin, server } = await serveStage()
const browser = await chromium.launch({ executablePath: process.env['CHROMIUM_PATH'] ?? '/usr/bin/chromium', args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'] })
const shots: { image: Buffer; width: number; height: number }[] = []
for (const theme of themes.split(','))
  for (const size of sizes.split(',')) {
    const [width = 360, height = 740] = size.split('x').map(Number)
    const context = await browser.newContext({ viewport: { width, height }, deviceScaleFactor: 2, hasTouch: true, isMobile: width < 700 })
    for (const name of names.split(',')) {
      const page = await context.newPage()
      page.on('pageerror', (error) => console.error(name, error.message, error.stack?.split('\n')[1]))
      page.on('console', (message) => { if (message.type() === 'error') console.error(name, message.text()) })
      await page.goto(`${origin}/?scene=${name}&theme=${theme}`)
      await page.waitForTimeout(350)
      for (const act of (process.env['ACT'] ?? '').split(';').filter(Boolean)) { await page.getByText(act, { exact: false }).or(page.getByRole('button', { name: act })).first().click(); await page.waitForTimeout(250) }
      const image = await page.screenshot({ fullPage: full === 'full' })
      const { width: w = 0, height: h = 0 } = await sharp(image).metadata()
      shots.push({ image, width: w, height: h })
      await page.close()
    }
    await context.close()
  }
await browser.close()
server.close()
const gap = 24
const height = Math.max(...shots.map((it) => it.height)) + 2 * gap
const width = shots.reduce((sum, it) => sum + it.width + gap, gap)
let left = gap
await sharp({ create: { width, height, channels: 3, background: '#888' } })
  .composite(shots.map((it) => { const at = { input: it.image, left, top: gap }; left += it.width + gap; return at }))
  .png()
  .toFile(out)
