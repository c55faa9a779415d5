import { expect } from 'vitest'
import type { Part, Screen } from './engines/screen.ts'
import { goTo, holdLine, keyIn, pathOf, press } from './harness.ts'

/** The one who has the phone gives it on; whoever takes it finds the page where it was. */
export const takeOver = async (page: Screen, person: string, title: string, pin = '2468'): Promise<void> => {
  await page.getByRole('button', { name: person }).click()
  await page.getByText(/PIN/).first().waitFor()
  await keyIn(page, pin)
  await press(page, 'Go on')
  await page.getByRole('heading', { level: 1, name: title }).waitFor()
}

/** A reason for everything that was missed, at once where a whole machine was not walked. A row that was settled goes a moment after its sheet. */
export const sayWhy = async (page: Screen): Promise<void> => {
  const missed = page.getByRole('button', { name: /Missed, no reason given|missed on / })
  const settled = page.getByText('No handover given').or(page.getByRole('button', { name: 'Sign this shift' }))
  for (;;) {
    await missed.or(settled).first().waitFor()
    const [name] = await missed.allInnerTexts()
    if (name === undefined) break
    await missed.first().click()
    await page.getByRole('dialog').getByText('Nobody was free').click()
    await page.getByRole('button', { name: /^Save the reason/ }).click()
    await page.getByRole('dialog').waitFor({ state: 'detached' })
    while ((await page.locator('button.row').allInnerTexts()).includes(name)) await page.waitForTimeout(250)
  }
  // A strip that fell due just before the shift ended can still be read; where it is not, its own screen takes the reason.
  const unread = page.getByRole('link', { name: /^Strip not read/ })
  const shift = await pathOf(page)
  for (let left = await unread.count(); left > 0; left--) {
    await unread.first().click()
    await press(page, 'Not done…')
    await page.getByRole('dialog').getByText('Nobody was free').click()
    await press(page, 'Save: not done')
    await page.getByRole('dialog').waitFor({ state: 'detached' })
    await goTo(page, shift)
    await settled.first().waitFor()
    while ((await unread.count()) >= left) await page.waitForTimeout(250)
  }
}

export const handOver = async (page: Screen, note: string): Promise<void> => {
  await press(page, 'No handover given')
  const dialog = page.getByRole('dialog')
  await dialog.getByRole('textbox').fill(note)
  await dialog.getByRole('button', { name: 'Hand over' }).click()
}

/** Whoever comes looks at everything, ticks it and accepts under their own name. */
export const walkAndAccept = async (page: Screen, person: string): Promise<number> => {
  await press(page, /^Handover not accepted/)
  const dialog = page.getByRole('dialog')
  const boxes = dialog.getByRole('checkbox')
  await boxes.first().waitFor()
  const count = await boxes.count()
  expect(await dialog.getByRole('button', { name: /left to look at$/ }).getAttribute('aria-disabled')).toBe('true')
  for (let index = 0; index < count; index++) await boxes.nth(index).check()
  await holdLine(page, new RegExp(`^I am ${person}`))
  await dialog.waitFor({ state: 'detached' })
  return count
}

/** The passphrase is asked for once everything has been fetched; a server that is only coming up is asked again. */
export const passphraseField = async (page: Screen): Promise<Part> => {
  const dialog = page.getByRole('dialog')
  const field = dialog.getByLabel('Your passphrase')
  const again = dialog.getByRole('button', { name: 'Try again' })
  for (;;) {
    await field.or(again).first().waitFor()
    if (await field.isVisible()) return field
    await again.click({ timeout: 5_000 }).catch(() => undefined)
  }
}
