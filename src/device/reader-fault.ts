/** Why the reader cannot work on this device right now; the number pad always can. */
export type ReaderFaultCode =
  /** A file of the reader is not at its place, or not kept for offline work yet. */
  | 'fileMissing'
  /** A file came, but is not the one that belongs to this build. */
  | 'fileDamaged'
  /** A path leads to another site. */
  | 'foreignOrigin'
  | 'startFailed'
  /** Also what a content policy without `wasm-unsafe-eval` looks like: the core then hangs without an error. */
  | 'startTimedOut'
  | 'passTimedOut'
  | 'closed'

export class ReaderFault extends Error {
  readonly code: ReaderFaultCode

  constructor(code: ReaderFaultCode, cause?: unknown) {
    super(code, cause === undefined ? undefined : { cause })
    this.name = 'ReaderFault'
    this.code = code
  }
}
