import type { Page } from 'playwright-core'

/** Until a screen is drawn: its code has come, what it asked the store for is there, and nothing moves any more. */
export const drawn = async (page: Page): Promise<void> => {
  await page.locator('main').waitFor()
  await page.waitForFunction(() => !/^(One moment|Un momento)/.test(document.querySelector('h1')?.textContent ?? ''))
  await page.evaluate(async () => {
    await document.fonts.ready
    for (let still = 0; still < 3; still++) await new Promise((done) => requestAnimationFrame(done))
    const ends = document.getAnimations().filter((it) => it.effect?.getComputedTiming().iterations !== Infinity)
    await Promise.all(ends.map((it) => it.finished.catch(() => undefined)))
  })
}

/** What a thumb cannot hit: links, buttons and fields that stand alone and are smaller than this either way. */
export const smallTargets = (page: Page, least: number): Promise<string[]> =>
  page.evaluate((wanted) => {
    const nameOf = (it: Element): string => {
      const { width, height } = it.getBoundingClientRect()
      return `${it.outerHTML.slice(0, 120)} ${Math.round(width)}×${Math.round(height)}`
    }
    return [...document.querySelectorAll<HTMLElement>('main button, main a, main summary, main select, main input:not([type=radio], [type=checkbox], [type=range], .unseen), main label:has([type=radio], [type=checkbox]), header button, header a, nav a')]
      .filter((it) => it.offsetParent !== null && getComputedStyle(it).display !== 'inline')
      .filter((it) => {
        const { width, height } = it.getBoundingClientRect()
        // A part of a pixel is lost where a row shares its height.
        return width < wanted - 0.5 || height < wanted - 0.5
      })
      .map(nameOf)
  }, least)

/** What an iPhone would zoom in on when it is tapped, and not zoom out of: fields of less than 16 px type. */
export const zoomingFields = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('input, textarea, select')]
      .filter((it) => !['file', 'radio', 'checkbox', 'range'].includes((it as HTMLInputElement).type) && parseFloat(getComputedStyle(it).fontSize) < 16)
      .map((it) => `${it.outerHTML.slice(0, 120)} ${getComputedStyle(it).fontSize}`),
  )

/** Text that is cut off, and a page that is wider than its screen. */
export const clipped = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const found: string[] = []
    const over = document.documentElement.scrollWidth - document.documentElement.clientWidth
    if (over > 0) found.push(`${over} px too wide`)
    for (const it of document.querySelectorAll<HTMLElement>('header *, main *, nav *')) {
      // What is kept for a screen reader alone is cut off on purpose; a choice's own text is the browser's to shorten.
      if (it.closest('.unseen, select, svg') || !it.textContent?.trim() || it.offsetParent === null) continue
      const { overflowX, overflowY } = getComputedStyle(it)
      // A word that is longer than its button runs over the next one.
      if (it.matches('button, .button, nav a, .segments label') && it.scrollWidth > it.clientWidth + 1) found.push(`wider than its button: ${it.outerHTML.slice(0, 120)}`)
      const isCut = (overflow: string): boolean => overflow === 'hidden' || overflow === 'clip'
      const { left, right } = it.getBoundingClientRect()
      if (isCut(overflowX) && it.scrollWidth > it.clientWidth + 1) found.push(`cut in its width: ${it.outerHTML.slice(0, 120)}`)
      else if (isCut(overflowY) && it.scrollHeight > it.clientHeight + 1) found.push(`cut in its height: ${it.outerHTML.slice(0, 120)}`)
      else if ((right > document.documentElement.clientWidth + 1 || left < -1) && !it.closest('[style*=overflow], .formula, .table-scroll')) found.push(`beyond the screen: ${it.outerHTML.slice(0, 120)}`)
    }
    return found.slice(0, 4)
  })

/** Contrast of every number that is read from afar, the least of each look, as WCAG 2.2 works it out. */
export const numberContrasts = (page: Page): Promise<{ what: string; ratio: number }[]> =>
  page.evaluate(() => {
    type Colour = readonly [red: number, green: number, blue: number, alpha: number]
    const canvas = new OffscreenCanvas(1, 1).getContext('2d', { willReadFrequently: true })!
    const colourOf = (css: string): Colour => {
      canvas.clearRect(0, 0, 1, 1)
      canvas.fillStyle = css
      canvas.fillRect(0, 0, 1, 1)
      const [red = 0, green = 0, blue = 0, alpha = 0] = canvas.getImageData(0, 0, 1, 1).data
      return [red, green, blue, alpha / 255]
    }
    const over = (top: Colour, below: Colour): Colour => [0, 1, 2].map((index) => top[index]! * top[3] + below[index]! * (1 - top[3])).concat(1) as unknown as Colour
    const behind = (it: Element | null): Colour => {
      if (!it) return colourOf('#fff')
      const own = colourOf(getComputedStyle(it).backgroundColor)
      return own[3] === 1 ? own : over(own, behind(it.parentElement))
    }
    const luminance = ([red, green, blue]: Colour): number => {
      const [r = 0, g = 0, b = 0] = [red, green, blue].map((it) => (it / 255 <= 0.04045 ? it / 255 / 12.92 : ((it / 255 + 0.055) / 1.055) ** 2.4))
      return 0.2126 * r + 0.7152 * g + 0.0722 * b
    }
    const numbers = document.querySelectorAll<HTMLElement>('.keyed, .amount, .found-value strong, .result-number, .pad button, .timer-ring strong, .splice > :first-child, .chart-readout strong')
    return [...numbers].filter((it) => it.offsetParent !== null && it.textContent?.trim()).map((it) => {
      const ground = behind(it)
      const [a, b] = [luminance(over(colourOf(getComputedStyle(it).color), ground)), luminance(ground)]
      return { what: it.outerHTML.slice(0, 80), ratio: (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05) }
    })
  })
