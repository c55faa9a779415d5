import type { Scene } from './scenes.ts'

const partOf = 'button, a, summary, label:has([type=radio], [type=checkbox])'
const nameOf = (it: Element): string => (it.getAttribute('aria-label') ?? it.textContent).trim()
const frame = (): Promise<number> => new Promise((drawn) => requestAnimationFrame(drawn))

/** A sheet lies over its screen. */
const top = (): ParentNode => [...document.querySelectorAll('dialog[open]')].at(-1) ?? document

const soon = async <T extends Element>(what: string, find: () => T | undefined): Promise<T> => {
  for (let frames = 0; frames < 600; frames++, await frame()) {
    const found = find()
    if (found) return found
  }
  throw new Error(`nothing to press: ${what}`)
}

/** As a thumb would: one after the other, each when it is there. */
export const pressed = async (parts: NonNullable<Scene['press']>): Promise<void> => {
  for (const part of parts) {
    if (typeof part === 'string') (await soon(part, () => [...top().querySelectorAll<HTMLElement>(partOf)].findLast((it) => nameOf(it).startsWith(part)))).click()
    else {
      const [name, keyed] = part
      const field = await soon(name, () => [...top().querySelectorAll('label')].findLast((it) => nameOf(it).startsWith(name))?.control as HTMLInputElement | undefined)
      field.value = keyed
      field.dispatchEvent(new Event('input', { bubbles: true }))
    }
    await frame()
    await frame()
  }
}
