import { computeAccessibleName, getRole, isDisabled, isInaccessible } from 'dom-accessibility-api'
import type { Step, Words } from './steps.ts'

/** Runs in the page: finds parts as a person names them, and says where the pointer must go. */
export interface PageFinder {
  all(steps: readonly Step[]): HTMLElement[]
  /** Exactly one, or an error that says how many. Null while there is none. */
  one(steps: readonly Step[]): HTMLElement | null
  isVisible(element: Element): boolean
  /** Where to press it, once it stands still, can be pressed and nothing lies over it; else why not yet. */
  target(element: HTMLElement): Promise<{ x: number; y: number } | string>
}

const tidy = (text: string | null): string => (text ?? '').replace(/\s+/g, ' ').trim()

const matches = (words: Words, text: string): boolean =>
  'source' in words ? new RegExp(words.source, words.flags).test(text) : words.exact ? text === tidy(words.text) : text.toLowerCase().includes(tidy(words.text).toLowerCase())

const within = (scope: ParentNode, css = '*'): HTMLElement[] => [...scope.querySelectorAll<HTMLElement>(css)]
const isProse = (element: Element): boolean => !['SCRIPT', 'STYLE', 'NOSCRIPT', 'HEAD'].includes(element.tagName)
const levelOf = (element: Element): number => Number(element.getAttribute('aria-level') ?? /^h([1-6])$/.exec(element.localName)?.[1])
/** The library knows no row headers: of a heading cell, only that it heads something. */
const roleOf = (element: Element): string | null => (element.localName === 'th' && element.getAttribute('scope') === 'row' ? 'rowheader' : getRole(element))

const labelsOf = (element: HTMLElement): string[] => {
  const named = (element.getAttribute('aria-labelledby') ?? '').split(/\s+/).filter(Boolean).map((id) => document.getElementById(id)?.textContent ?? '')
  const labels = [...((element as HTMLInputElement).labels ?? [])].map((label) => label.textContent)
  return [...named, ...labels, element.getAttribute('aria-label') ?? ''].map(tidy).filter(Boolean)
}

const take = (scope: ParentNode, step: Exclude<Step, { by: 'place' | 'or' }>): HTMLElement[] => {
  switch (step.by) {
    case 'role':
      return within(scope).filter(
        (it) =>
          roleOf(it) === step.role && (step.level === undefined || levelOf(it) === step.level) && !isInaccessible(it) && (!step.name || matches(step.name, tidy(computeAccessibleName(it)))),
      )
    case 'text':
      // The smallest that holds the words.
      return within(scope).filter((it) => isProse(it) && matches(step.text, tidy(it.textContent)) && ![...it.children].some((child) => isProse(child) && matches(step.text, tidy(child.textContent))))
    case 'label':
      return within(scope).filter((it) => labelsOf(it).some((label) => matches(step.text, label)))
    case 'css':
      return within(scope, step.css).filter((it) => (!step.holding || matches(step.holding, tidy(it.textContent))) && (!step.has || all(step.has, it).length > 0))
  }
}

const inOrder = (elements: HTMLElement[]): HTMLElement[] => [...new Set(elements)].sort((a, b) => (a.compareDocumentPosition(b) & Node.DOCUMENT_POSITION_FOLLOWING ? -1 : 1))

const all = (steps: readonly Step[], scope: ParentNode = document): HTMLElement[] =>
  steps.reduce<{ scopes: ParentNode[]; found: HTMLElement[] }>(
    ({ scopes, found }, step) => {
      const next = step.by === 'place' ? [found.at(step.index)].filter((it) => it !== undefined) : step.by === 'or' ? inOrder([...found, ...all(step.steps, scope)]) : inOrder(scopes.flatMap((scope) => take(scope, step)))
      return { scopes: next, found: next }
    },
    { scopes: [scope], found: [] },
  ).found

const one = (steps: readonly Step[]): HTMLElement | null => {
  const found = all(steps)
  if (found.length > 1) throw new Error(`${found.length} stand there: ${found.map((it) => it.outerHTML.slice(0, 100)).join(' | ')}`)
  return found[0] ?? null
}

const isVisible = (element: Element): boolean => {
  const { width, height } = element.getBoundingClientRect()
  return width > 0 && height > 0 && element.checkVisibility({ visibilityProperty: true })
}

const twoFrames = (): Promise<void> => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(() => resolve())))

const target = async (element: HTMLElement): Promise<{ x: number; y: number } | string> => {
  if (!isVisible(element)) return 'not visible'
  if (isDisabled(element) || element.closest('[aria-disabled="true"]')) return 'not to be pressed yet'
  const middle = (): { x: number; y: number } => {
    const { x, y, width, height } = element.getBoundingClientRect()
    return { x: x + width / 2, y: y + height / 2 }
  }
  const lies = ({ x, y }: { x: number; y: number }): Element | null => document.elementFromPoint(x, y)
  const isHit = (hit: Element | null): boolean => hit !== null && (element.contains(hit) || (hit.closest('label')?.contains(element) ?? false))
  if (!isHit(lies(middle()))) element.scrollIntoView({ block: 'center', behavior: 'instant' })
  const before = middle()
  await twoFrames()
  const after = middle()
  if (Math.abs(before.x - after.x) > 0.5 || Math.abs(before.y - after.y) > 0.5) return 'it moves'
  const hit = lies(after)
  return isHit(hit) ? after : `under ${hit?.outerHTML.slice(0, 100) ?? 'nothing'}`
}

;(globalThis as unknown as { finder: PageFinder }).finder = { all, one, isVisible, target }
