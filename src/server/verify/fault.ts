/** Where a walk through the record first found something that does not hold. */
export interface BadLink {
  /**
   * `text`: the kept text is no canonical entry, or its columns say something else; `hash`: the text does not give its hash; `device`: no such device, or
   * its seed does not follow from its key; `signature`: not of the device's key; `chain`: does not follow on the device's entry before it; `link`: does not follow on
   * the record's entry before it; `head`: the record ends elsewhere than it says; `reach`: a device's last entry is another; `witness`: a head that
   * this server signed is not in the record; `plan`: a plan's extract differs from its entry; `photo`: bytes that do not give their name.
   */
  fault: 'text' | 'hash' | 'device' | 'signature' | 'chain' | 'link' | 'head' | 'reach' | 'witness' | 'plan' | 'photo'
  gseq?: number
  dev?: string
  seq?: number
  /** What was found, and what should have been there. */
  found?: string
  wanted?: string
}

export type Walked =
  | { ok: true; entries: number; devices: number; asides: number; photos: number; witnesses: number; byStatus: ReadonlyMap<string, number>; gseq: number; sh: string }
  | ({ ok: false } & BadLink)
