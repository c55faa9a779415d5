/** A code and its facts; the screens have the sentence. Numbers carry their unit in the name of the fact. */
export type Facts = { readonly [name: string]: string | number | boolean | readonly string[] }
export interface Say {
  code: string
  facts: Facts
}

export const say = (code: string, facts: Facts = {}): Say => ({ code, facts })

/** A remedy that is not given now: why, and what has to be done first. */
export interface Refused {
  /** The interlock or the reason: `sulfiteNotInLimits`. */
  code: string
  facts: Facts
  doFirst: Say
  source: string
}
