import type { CDPSession, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { found, Laboratory, letTimePass, Phone } from './harness.ts'
import { drawn } from './measures.ts'

interface Part {
  role: string
  name: string
}

/** A page that nobody touches: Tab, keys and the name that the browser itself gives a screen reader. */
class Hands {
  readonly #session: Promise<CDPSession>

  constructor(readonly page: Page) {
    this.#session = page.context().newCDPSession(page)
  }

  /** What has the focus, as the browser's own accessibility tree says it; nothing between the last part and the first, where the browser's own bar has it. */
  async at(): Promise<Part | undefined> {
    const session = await this.#session
    const { result } = await session.send('Runtime.evaluate', { expression: 'document.activeElement === document.body ? null : document.activeElement' })
    if (!result.objectId) return undefined
    const { nodes } = await session.send('Accessibility.getPartialAXTree', { objectId: result.objectId, fetchRelatives: false })
    // It may have been drawn away meanwhile.
    const { result: stands } = await session.send('Runtime.callFunctionOn', { objectId: result.objectId, functionDeclaration: 'function () { return this === document.activeElement }' })
    if (!stands.value) return undefined
    const text = (it: { value?: unknown } | undefined): string => String(it?.value ?? '').replace(/\s+/g, ' ').trim()
    return { role: text(nodes[0]?.role), name: text(nodes[0]?.name) }
  }

  /** By Tab to what is so called; nothing on the way is without a name or without a sign that it has the focus. */
  async to(role: string, name: RegExp): Promise<string> {
    const passed: string[] = []
    for (;;) {
      await this.page.keyboard.press('Tab')
      const part = await this.at()
      if (part) {
        expect(part.name, `a ${part.role} after ${passed.at(-1)} has a name`).not.toBe('')
        expect(await this.page.evaluate(() => getComputedStyle(document.activeElement!).outlineStyle), `${part.name} shows that it has the focus`).not.toBe('none')
        if (part.role === role && name.test(part.name)) return part.name
      }
      passed.push(part ? `${part.role} ${part.name}` : '–')
      if (passed.length > 80) throw new Error(`no ${role} ${name} by Tab: ${passed.join(' | ')}`)
    }
  }

  async press(role: string, name: RegExp): Promise<string> {
    const at = await this.to(role, name)
    await this.page.keyboard.press('Enter')
    return at
  }

  /** A key held down until the line has filled. */
  async hold(name: RegExp, key: 'Enter' | 'Space'): Promise<void> {
    await this.to('button', name)
    const line = await this.page.evaluateHandle(() => document.activeElement as HTMLElement)
    await this.page.keyboard.down(key)
    await this.page.waitForFunction((it) => !it.isConnected || it.getAttribute('aria-pressed') === 'true', line)
    await this.page.keyboard.up(key)
  }

  /** A number, Enter, and the second look where it is asked for. */
  async key(digits: string): Promise<void> {
    await this.page.getByRole('group', { name: 'Number pad' }).waitFor()
    await this.page.keyboard.type(digits)
    expect(await this.page.locator('output.keyed').innerText()).toBe(digits)
    await this.page.keyboard.press('Enter')
    const saved = this.page.getByText('Saved on this phone')
    await this.page.getByRole('dialog').or(saved).first().waitFor()
    if (!(await saved.isVisible())) await this.press('button', new RegExp(`^Keep ${digits}$`))
    await saved.waitFor()
  }

  async stands(title: string): Promise<void> {
    await this.page.getByRole('heading', { name: title, level: 1 }).waitFor()
    await drawn(this.page)
  }
}

/**
 * W3C, Web Content Accessibility Guidelines 2.2 (2023): 2.1.1 all of it from a keyboard, 2.4.7 the focus seen, 4.1.2 each part with a name and a role.
 * What the job asks for on the way (the repeat, the sulfite before the acid, the caution before the amount, the re-check after mixing): main-job.test.ts.
 */
describe('the main job from the keyboard alone', () => {
  const lab = new Laboratory()
  let phone: Phone
  let hands: Hands

  beforeAll(async () => {
    await lab.start()
    phone = new Phone(lab.origin)
    const page = await phone.open(`/#enrol=${lab.code}`)
    await found(page, 'Marta Quintela')
    hands = new Hands(page)
  })
  afterAll(async () => {
    await phone.end()
    await lab.end()
  })

  it('begins a round and saves its first reading', async () => {
    const { page } = hands
    await hands.press('link', /^Round$/)
    await hands.stands('Round')
    await hands.press('link', /^Start · \d+ checks$/)
    await page.getByText(/^1 of \d+$/).waitFor()
    const pad = page.getByRole('group', { name: 'Number pad' })
    for (let step = 0; !(await pad.isVisible()); step++) {
      if (step > 20) throw new Error('no reading in the round')
      await hands.press('button', /^Right/)
      await page.getByText('Saved on this phone').waitFor()
      await hands.press('button', /^Next: /)
    }
    // Which check comes first hangs on the hour.
    const aim = /^aim ([\d.]+)$/.exec(await page.getByText(/^aim /).innerText())
    await hands.key(aim![1]!)
  })

  it('leaves the round, and confirms a pH out of limits by its repeat', async () => {
    const { page } = hands
    await hands.press('link', /^Now$/)
    await hands.stands('Now')
    await hands.press('link', /Fix 1/)
    await hands.stands('Fixing bath 1')
    await hands.press('link', /^Fixing bath pH/)
    await hands.stands('Fixing bath pH')
    await hands.key('4.92')
    await page.getByRole('alert').filter({ hasText: 'Read again to confirm' }).waitFor()
    await hands.press('button', /^Read again$/)
    await hands.key('4.92')
    await page.getByRole('alert').filter({ hasText: 'Confirmed' }).waitFor()
  })

  it('is refused the acid until what comes first is done, holds each line of the caution, and only then sees the amount', async () => {
    const { page } = hands
    await hands.press('link', /^What to do$/)
    await page.waitForURL('**/exception/**')
    for (let refusals = 0; ; refusals++) {
      await hands.stands('Fixing bath pH')
      await hands.press('link', /^Bring the pH down: Acetic acid 28 %/)
      await page.getByText('Before you pour').or(page.getByText('Not now')).first().waitFor()
      if (await page.getByText('Before you pour').isVisible()) break
      if (refusals > 6) throw new Error('still refused')
      const first = (await page.locator('.next a').innerText()).trim()
      await hands.press('link', new RegExp(`^${first}$`))
      await hands.stands(first)
      if (await page.getByRole('group', { name: 'Number pad' }).isVisible()) {
        const [aim] = /[\d.]+/.exec(await page.getByText(/^.*aim /).first().innerText()) ?? []
        await hands.key(aim!)
      } else {
        await hands.press('button', /^Right/)
        await page.getByText('Saved on this phone').waitFor()
      }
      await hands.press('link', /^Now$/)
      await hands.stands('Now')
      await hands.press('link', /^Fixing bath pH 4\.92 To correct/)
    }
    expect(await page.locator('.amount').count()).toBe(0)
    // A tap of the key is not a hold.
    await hands.press('button', /^Into a fixing bath that is short of sulfite/)
    expect(await page.getByRole('button', { name: /^Into a fixing bath/ }).getAttribute('aria-pressed')).toBe('false')
    await page.keyboard.press('Shift+Tab')
    await hands.hold(/^Into a fixing bath that is short of sulfite/, 'Enter')
    expect(await page.locator('.amount').count()).toBe(0)
    await hands.hold(/^Slowly, at the circulation return/, 'Space')
    await page.locator('.amount').waitFor()
  })

  it('reads the working, logs what was poured, waits while it mixes, and closes the exception by the re-check', async () => {
    const { page } = hands
    await hands.press('button', /^Show the working/)
    await page.getByRole('dialog', { name: 'Working' }).waitFor()
    await hands.press('button', /^Close$/)
    await page.getByRole('dialog').waitFor({ state: 'detached' })
    await hands.press('button', /^Poured another amount$/)
    const sheet = page.getByRole('dialog', { name: 'Poured another amount' })
    await sheet.waitFor()
    // The sheet opens with the focus on its Close.
    await page.keyboard.type('0.01')
    expect(await sheet.locator('.amount strong').innerText()).toBe('0.01')
    await page.keyboard.press('Enter')
    await sheet.locator('.problem').waitFor()
    await hands.to('textbox', /^Why another amount/)
    await page.keyboard.type('7 mL were lost')
    expect(await sheet.locator('.amount strong').innerText(), 'a figure of the reason is no figure of the amount').toBe('0.01')
    await hands.press('button', /^Close$/)
    await sheet.waitFor({ state: 'detached' })
    const shown = (await page.locator('.amount').innerText()).replace(/\s+/g, ' ').trim()
    expect(await hands.press('button', /^Poured \d/)).toBe(`Poured ${shown}`)
    await page.getByRole('timer', { name: 'Mixing' }).waitFor()
    // With a server to ask, the phone would find its clock half an hour ahead and go by the server's.
    await lab.stop()
    await letTimePass(page, 30)
    await hands.press('link', /^Re-check: Fixing bath pH$/)
    await hands.stands('Fixing bath pH')
    await hands.key('4.52')
    await page.getByRole('status').filter({ hasText: 'Back in limits' }).waitFor()
    await hands.press('button', /^Done$/)
    await page.getByRole('link', { name: /^Fixing bath pH 4/ }).waitFor({ state: 'detached' })
  })

  it('broke no content policy and failed nowhere', () => {
    expect(phone.complaints).toEqual([])
  })
})
