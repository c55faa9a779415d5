import type { Envelope } from '../record/entry.ts'
import { Lab } from './lab.ts'
import type { Signature } from './shift-signatures.ts'

/**
 * The lab as a signer saw it: the log up to the numbers that the signature covers, so that a signed page reads the same for ever, whatever came in
 * since. A device that the signer had never heard of counts up to the minute of the signature, except for what it then says about that shift.
 * The lab given must hold the log from well before the shift.
 */
export const labAsSigned = (lab: Lab, { time, data, late }: Signature): Lab => {
  const cameLater = new Set(late)
  const wasKnown = ({ id, dev, seq, enteredAt }: (typeof lab.ledger.lines)[number]): boolean => {
    const covered = data.covers[dev]
    return !cameLater.has(id) && (covered === undefined ? enteredAt < time : seq <= covered)
  }
  const signed = new Lab()
  signed.add(lab.ledger.lines.filter(wasKnown).map(({ id, h, recvAt }) => ({ entry: lab.ledger.original(id) as Envelope, h, recvAt })))
  return signed
}
