/**
 * What the steps of a test may ask of a browser, in the shape that playwright's `Page` and `Locator` already have: one set of steps then
 * drives Chromium through playwright, and Firefox and WebKit through their WebDriver clients.
 */
export interface Screen extends Finder {
  evaluate<Result>(work: () => Result | Promise<Result>): Promise<Result>
  evaluate<Result, Given>(work: (given: Given) => Result | Promise<Result>, given: Given): Promise<Result>
  goto(address: string): Promise<unknown>
  reload(): Promise<unknown>
  waitForURL(pattern: string): Promise<void>
  setViewportSize(size: { width: number; height: number }): Promise<void>
  waitForTimeout(milliseconds: number): Promise<void>
  screenshot(options?: { path?: string }): Promise<Buffer>
  keyboard: { type(text: string): Promise<void>; press(key: string): Promise<void> }
  touchscreen: { tap(x: number, y: number): Promise<void> }
  mouse: { move(x: number, y: number): Promise<void>; down(): Promise<void>; up(): Promise<void> }
}

export interface Finder {
  getByRole(role: Role, options?: { name?: string | RegExp; exact?: boolean; level?: number }): Part
  getByText(text: string | RegExp, options?: { exact?: boolean }): Part
  getByLabel(text: string | RegExp, options?: { exact?: boolean }): Part
  locator(css: string, options?: { hasText?: string | RegExp; has?: Part }): Part
}

export type Role =
  | 'button' | 'checkbox' | 'dialog' | 'group' | 'heading' | 'img' | 'link' | 'listitem' | 'radio' | 'region' | 'rowheader' | 'slider' | 'status' | 'textbox' | 'timer'

export interface Box {
  x: number
  y: number
  width: number
  height: number
}

export type State = 'attached' | 'detached' | 'visible' | 'hidden'

/** What is found, each time anew: whoever uses it waits until it is there. */
export interface Part extends Finder {
  first(): Part
  last(): Part
  nth(index: number): Part
  or(other: Part): Part
  click(options?: { timeout?: number }): Promise<void>
  check(): Promise<void>
  fill(text: string): Promise<void>
  setInputFiles(path: string): Promise<void>
  innerText(): Promise<string>
  allInnerTexts(): Promise<string[]>
  getAttribute(name: string): Promise<string | null>
  boundingBox(): Promise<Box | null>
  isVisible(): Promise<boolean>
  count(): Promise<number>
  waitFor(options?: { state?: State; timeout?: number }): Promise<void>
  evaluate<Result>(work: (element: HTMLElement) => Result | Promise<Result>): Promise<Result>
}
