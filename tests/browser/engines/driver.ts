import type { Step } from './steps.ts'

/** What a client of a browser must be able to do; everything else is made of it. */
export interface Driver {
  goTo(address: string): Promise<void>
  reload(): Promise<void>
  /** Runs a function's source in the page with what is given (as JSON) and waits for its answer. */
  run(source: string, given: readonly unknown[]): Promise<unknown>
  type(text: string): Promise<void>
  press(key: string): Promise<void>
  move(x: number, y: number): Promise<void>
  down(): Promise<void>
  up(): Promise<void>
  /** By a finger, where the client has one. */
  tap(x: number, y: number): Promise<void>
  /** Gives a file to the one input that is found. */
  choose(steps: readonly Step[], path: string): Promise<void>
  resize(size: { width: number; height: number }): Promise<void>
  screenshot(): Promise<Buffer>
  /** As when the battery dies: no leave-taking. */
  kill(): Promise<void>
}
