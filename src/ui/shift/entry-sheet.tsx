import { useEffect, useState } from 'preact/hooks'
import { createWebVerifier } from '../../device/web-seal.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import type { Ledger } from '../../projections/ledger.ts'
import type { Signature } from '../../projections/shift-signatures.ts'
import type { EntryId } from '../../record/ids.ts'
import type { Sealed } from '../../record/entry.ts'
import { sealProblem } from '../../record/seal.ts'
import { useApp, useWords } from '../app-context.ts'
import { Row, Rows } from '../parts/card.tsx'
import { Sheet } from '../parts/sheet.tsx'
import { useDates } from '../use-dates.ts'
import { lineText, personName } from './line-text.ts'
import { Photos } from './photos.tsx'
import { shortHash } from './short-hash.ts'

/** The evidence behind a figure: who keyed it, when, on which phone, its pictures, what became of it, whether its seal holds and who has signed over it. */
export const EntrySheet = ({ id, plan, ledger, signature, onClose }: { id: EntryId; plan: LabPlan; ledger: Ledger; signature: Signature | undefined; onClose(): void }) => {
  const { archive } = useApp()
  const all = useWords()
  const words = all.shift.entry
  const line = ledger.line(id)
  const [phone, setPhone] = useState<string>()
  const [seal, setSeal] = useState<keyof typeof words.seals>('checking')
  useEffect(() => {
    if (!line) return
    const check = async (): Promise<void> => {
      const it = await archive()
      const device = (await it.devices()).find(({ dev }) => dev === line.dev)
      setPhone(device?.name)
      const sealed = (await it.chain(line.dev, line.seq, line.seq)).find(({ entry }) => entry.id === id)
      if (!device || !sealed) return setSeal('unknown')
      setSeal((await sealProblem(sealed as Sealed, device.key, createWebVerifier())) ?? 'holds')
    }
    void check()
  }, [id])
  if (!line) return null
  const { when } = useDates(plan.timeZone)
  const original = ledger.original(id)
  const whyOf = (change: EntryId): string => {
    const it = ledger.line(change)
    return it?.kind === 'amend' || it?.kind === 'withdraw' ? `${it.data.why} (${personName(plan, it.person)})` : ''
  }
  const keyedFirst = line.kind === 'reading' && original?.kind === 'reading' && original.data.keyed !== line.data.keyed ? original.data.keyed : undefined
  const pictures = [...new Set([...(original?.blobs ?? []), ...ledger.lines.flatMap((it) => (it.kind === 'photo' && it.data.of === id && !it.withdrawnBy ? [it.data.sha256] : []))])]
  const signer = signature && personName(plan, signature.person)
  const isUnder = signature && line.seq <= (signature.data.covers[line.dev] ?? 0)
  const signedText = !signature ? words.notSigned : isUnder ? words.signedBy(signer ?? '') : signature.late.includes(id) && !signature.notCountersigned.includes(id) ? words.countersigned : words.cameLater
  return (
    <Sheet title={words.kinds[line.kind]} closeName={all.shell.close} onClose={onClose}>
      <p><strong>{lineText(line, plan, all)}</strong></p>
      {line.withdrawnBy ? <p>{words.withdrawn(whyOf(line.withdrawnBy))}</p> : null}
      {line.amendedBy.map((change) => <p key={change}>{words.amended(whyOf(change))}</p>)}
      <Photos of={pictures} />
      <Rows>
        {keyedFirst ? <Row what={words.was} value={keyedFirst} /> : null}
        <Row what={words.spoke} value={when(line.time)} />
        {line.enteredAt - line.time > 60_000 ? <Row what={words.entered} value={when(line.enteredAt)} /> : null}
        {line.recvAt === undefined ? null : <Row what={words.received} value={when(line.recvAt)} />}
        <Row what={words.person} value={personName(plan, line.person) || words.nobody} />
        <Row what={words.phone} under={words.number(line.seq)} value={phone ?? line.dev.slice(-4)} />
        <Row what={words.hash} value={<code>{shortHash(line.h)}</code>} />
        <Row what={words.seal} under={words.seals[seal]} />
        <Row what={words.signature} under={signedText} />
      </Rows>
    </Sheet>
  )
}
