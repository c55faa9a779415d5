import { useEffect, useState } from 'preact/hooks'
import { personOf } from '../../plan/find.ts'
import type { PersonId } from '../../plan/ids.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import { canBeSettled, openItemOf, ownExceptions } from '../../projections/shift-blockers.ts'
import type { ShiftPage } from '../../projections/shift-page.ts'
import { ownExceptionCode, type Signature } from '../../projections/shift-signatures.ts'
import type { DataOf } from '../../record/kinds.ts'
import type { Hash } from '../../record/ids.ts'
import { useApp, useWords } from '../app-context.ts'
import type { KnownDevice } from '../archive.ts'
import { Banner } from '../parts/banner.tsx'
import { Card, Row, Rows } from '../parts/card.tsx'
import { Field } from '../parts/field.tsx'
import { Sheet } from '../parts/sheet.tsx'
import { SavingProblem } from '../saving-problem.tsx'
import { useSaving } from '../saving.ts'
import { useDates } from '../use-dates.ts'
import { personName } from './line-text.ts'
import { Prove, type Word } from './prove.tsx'
import { shortHash } from './short-hash.ts'
import { SilentPhones } from './silent-phones.tsx'

interface SignGiven {
  plan: LabPlan
  page: ShiftPage
  by: PersonId
  /** Given before without the server: the same is signed again. */
  again?: Signature | undefined
  onDone(): void
}

/** The supervisor's signature: what it means, who gives it, what it covers, and what it names because nobody can put it right. */
export const SignSheet = ({ plan, page, by, again, onDone }: SignGiven) => {
  const { archive, phone, now } = useApp()
  const all = useWords()
  const { when } = useDates(plan.timeZone)
  const words = all.shift.sign
  const saving = useSaving()
  const [remark, setRemark] = useState(again?.data.remark ?? '')
  const [tried, setTried] = useState(false)
  const [digest, setDigest] = useState<Hash>()
  const [devices, setDevices] = useState<KnownDevice[]>([])
  const text = again ? again.digestText : page.digestText
  useEffect(() => void archive().then(async (it) => setDevices(await it.devices())), [])
  useEffect(() => void archive().then(async (it) => setDigest(again ? again.data.digest : await it.sha256(text))), [text])

  const lasting = page.blockers.filter((it) => !canBeSettled(it))
  const own = ownExceptions(page, by)
  const onCall = plan.onCall !== undefined && plan.onCall !== by ? personOf(plan, plan.onCall) : undefined
  const needsRemark = !again && lasting.length > 0
  const covers = again ? again.data.covers : page.covers
  const entries = text.split('\n').length - 2

  const save = async (word: Word, about: Hash): Promise<boolean> => {
    const server = await (await archive()).server()
    const given: DataOf<'signOff'> = again
      ? { ...again.data, provisional: false }
      : {
          shift: page.span.shift.id, date: page.span.date, from: page.span.from, to: page.span.to, covers, digest: about, meaning: 'reviewedAndReleased', provisional: word.provisional,
          openItems: [
            ...lasting.map(openItemOf),
            ...page.exceptions.flatMap(({ isOpen, exception }) => (isOpen ? [{ code: 'exceptionHandedOver', ref: exception.id }] : [])),
            ...own.map((ref) => ({ code: ownExceptionCode, ref })),
          ],
        }
    const data: DataOf<'signOff'> = {
      ...given,
      ...(remark.trim() ? { remark: remark.trim() } : {}),
      ...(server?.head ? { head: server.head } : {}),
      ...(word.provisional ? {} : { proof: word.proof }),
    }
    const id = await saving.save('signOff', data)
    if (id) {
      phone.sendNow()
      onDone()
    }
    return id !== undefined
  }
  const isComplete = (): boolean => {
    setTried(true)
    return !needsRemark || remark.trim() !== ''
  }
  const isRefused = own.length > 0 && !onCall
  return (
    <Sheet title={again ? words.confirmTitle : words.title} closeName={all.shell.close} onClose={onDone}>
      <SavingProblem of={saving} />
      <Card>
        <p class="small quiet">{words.means}</p>
        <p class="meaning">{words.meaning}</p>
        <p>{words.as(personName(plan, by), when(now.value))}</p>
        {again ? <p class="small quiet">{words.confirmMore}</p> : null}
      </Card>
      {own.length && !again ? <Banner kind={isRefused ? 'stop' : 'warn'} title={words.own(own.length)}><p>{onCall ? words.ownWaits(onCall.name) : words.ownRefused}</p></Banner> : null}
      {isRefused && !again ? null : (
        <>
          {needsRemark ? (
            <Card title={all.shift.blockers.lasting} beside={lasting.length} level={3}>
              <ul class="names">{[...new Set(lasting.map(({ code }) => code))].map((code) => <li key={code}>{all.shift.blockers.what[code]} ({lasting.filter((it) => it.code === code).length})</li>)}</ul>
            </Card>
          ) : null}
          <Card title={words.covers(entries)} level={3}>
            <Rows>
              {Object.entries(covers).map(([dev, seq]) => <Row key={dev} what={devices.find((it) => it.dev === dev)?.name ?? dev.slice(-4)} value={<span class="small">{words.upTo(seq)}</span>} />)}
              <Row what={words.digest} value={<code>{digest ? shortHash(digest) : ''}</code>} />
            </Rows>
          </Card>
          {again ? null : <SilentPhones plan={plan} since={page.span.to} />}
          {again ? null : <Field name={needsRemark ? words.remark : words.remarkPlain} kind="long" value={remark} onChange={setRemark} problem={tried && needsRemark && !remark.trim() ? words.remarkMissing : undefined} />}
          <Prove
            by={by} name={words.save} isComplete={isComplete} mayBeProvisional={!again} onWord={save}
            about={async () => (again ? again.data.digest : (await archive()).sha256(page.digestText))}
          />
        </>
      )}
    </Sheet>
  )
}
