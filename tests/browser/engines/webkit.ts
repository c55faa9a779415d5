import { spawn, type ChildProcess } from 'node:child_process'
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { Builder, Capabilities, Key, Origin, type WebDriver } from 'selenium-webdriver'
import { freePort } from '../../server/kill.ts'
import type { Start } from './driven-phone.ts'
import type { Driver } from './driver.ts'

const window = new URL('webkit-window.js', import.meta.url).pathname

/** Starts a program in a group of its own, which can be killed whole; ready when it has said so. */
const program = async (command: string, args: readonly string[], env: NodeJS.ProcessEnv, hear: (line: string) => void): Promise<ChildProcess> => {
  const child = spawn(command, args, { detached: true, stdio: ['ignore', 'pipe', 'pipe'], env: { ...process.env, ...env } })
  for (const stream of [child.stdout, child.stderr]) {
    let rest = ''
    stream.on('data', (chunk: Buffer) => {
      const lines = (rest + chunk.toString()).split('\n')
      rest = lines.pop()!
      lines.forEach(hear)
    })
  }
  await new Promise<void>((resolve, reject) => {
    child.once('spawn', resolve)
    child.once('error', reject)
  })
  return child
}

const killed = async (child: ChildProcess): Promise<void> => {
  const ended = child.exitCode === null && child.signalCode === null ? new Promise((resolve) => child.once('exit', resolve)) : undefined
  process.kill(-child.pid!, 'SIGKILL')
  await ended
}

/** A screen that nobody sees: the engine draws on X11 only. */
const openDisplay = async (): Promise<{ display: string; child: ChildProcess }> =>
  new Promise((resolve, reject) => {
    program('Xvfb', ['-displayfd', '1', '-screen', '0', '1600x2600x24'], {}, (line) => {
      if (/^\d+$/.test(line)) resolve({ display: `:${line}`, child: starting.child! })
    }).then((child) => (starting.child = child), reject)
    const starting: { child?: ChildProcess } = {}
  })

const connected = async (port: number, build: () => Promise<WebDriver>): Promise<WebDriver> => {
  for (const until = Date.now() + 20_000; ; await new Promise((resolve) => setTimeout(resolve, 50))) {
    const isUp = await fetch(`http://127.0.0.1:${port}/status`).then(() => true, () => false)
    if (isUp) return build()
    if (Date.now() > until) throw new Error('WebKitWebDriver does not answer')
  }
}

/**
 * Through Debian's WebKitWebDriver. The window is our own (`webkit-window.js`): the one that comes with the engine forgets
 * everything when it is driven, and a phone that forgets cannot be started again.
 */
export const openWebKit = async ({ profile, downloads, before, complain }: Start): Promise<Driver> => {
  const scripts = join(profile, 'before.json')
  writeFileSync(scripts, JSON.stringify(before))
  const { display, child: screen } = await openDisplay()
  const port = await freePort()
  const door = await program('WebKitWebDriver', ['-p', String(port)], { DISPLAY: display, LANG: 'C.UTF-8', LANGUAGE: 'en_GB' }, (line) => {
    const error = /^CONSOLE .*?ERROR:? (.*)$/.exec(line)
    if (error) complain(error[1]!)
  })
  const capabilities = new Capabilities({ browserName: 'bathkeeper-window', 'webkitgtk:browserOptions': { binary: '/usr/bin/gjs', args: ['-m', window, profile, downloads, scripts] } })
  const driver = await connected(port, async () => new Builder().usingServer(`http://127.0.0.1:${port}`).withCapabilities(capabilities).build())
  await driver.manage().setTimeouts({ script: 90_000, pageLoad: 90_000 })
  const act = (): ReturnType<WebDriver['actions']> => driver.actions({ async: true })
  return {
    goTo: (address) => driver.get(address),
    reload: () => driver.navigate().refresh(),
    run: async (source, given) => {
      const answer: { is?: unknown; thrown?: string } = await driver.executeAsyncScript(
        `const done = arguments[1]; Promise.resolve().then(() => (${source})(...JSON.parse(arguments[0]))).then((is) => done({ is }), (thrown) => done({ thrown: String(thrown) }))`,
        JSON.stringify(given),
      )
      if (answer.thrown !== undefined) throw new Error(answer.thrown)
      return answer.is
    },
    type: (text) => act().sendKeys(text).perform(),
    press: (key) => act().sendKeys((Key as unknown as Record<string, string>)[key.toUpperCase().replace(/ARROW(.*)/, 'ARROW_$1').replace('BACKSPACE', 'BACK_SPACE')] ?? key).perform(),
    move: (x, y) => act().move({ x: Math.round(x), y: Math.round(y), origin: Origin.VIEWPORT, duration: 0 }).perform(),
    down: () => act().press().perform(),
    up: () => act().release().perform(),
    // It knows no finger: it takes one for the mouse.
    tap: (x, y) => act().move({ x: Math.round(x), y: Math.round(y), origin: Origin.VIEWPORT, duration: 0 }).press().release().perform(),
    choose: async (steps, path) => {
      const input = await driver.executeScript(`return finder.one(${JSON.stringify(steps)})`)
      await (input as Awaited<ReturnType<typeof driver.findElement>>).sendKeys(path)
    },
    resize: async ({ width, height }) => {
      await driver.manage().window().setRect({ x: 0, y: 0, width, height })
      for (const until = Date.now() + 10_000; (await driver.executeScript('return innerWidth + "x" + innerHeight')) !== `${width}x${height}`; )
        if (Date.now() > until) throw new Error(`the window does not take ${width} × ${height}`)
    },
    screenshot: async () => Buffer.from(await driver.takeScreenshot(), 'base64'),
    kill: async () => {
      await killed(door)
      await killed(screen)
    },
  }
}
