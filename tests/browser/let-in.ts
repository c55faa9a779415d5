import type { Page } from 'playwright-core'
import { Phone as Device } from '../server/phone.ts'
import { goTo, press } from './harness.ts'

/** A second phone, as the protocol sees it, that the supervisor lets in: what it says arrives when the test wants it to. */
export const letIn = async (page: Page, origin: string, passphrase = 'silver nitrate in the dark'): Promise<Device> => {
  await goTo(page, '/menu/devices')
  await page.getByLabel('Passphrase').fill(passphrase)
  await press(page, 'Sign in to manage')
  await press(page, 'Add a phone')
  const code = await page.locator('.digits').innerText()
  const device = new Device((request) => fetch(request), origin)
  await device.enrol(code)
  await press(page, 'Close')
  await press(page, /A phone of a test/)
  await press(page, 'They agree: let it in')
  await page.getByText('in use').nth(1).waitFor()
  return device
}
