/** Milliseconds since 1970. Comes in from `main.ts`, or from a test. */
export type Clock = () => number
