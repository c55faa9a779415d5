import { useEffect, useState } from 'preact/hooks'
import { personOf } from '../../plan/find.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import type { Blocker } from '../../projections/shift-blockers.ts'
import type { ShiftPage } from '../../projections/shift-page.ts'
import { ownExceptionCode, type Signature } from '../../projections/shift-signatures.ts'
import { useApp, useWords } from '../app-context.ts'
import { Banner } from '../parts/banner.tsx'
import { Button } from '../parts/button.tsx'
import { Card } from '../parts/card.tsx'
import { useDates } from '../use-dates.ts'
import { personName } from './line-text.ts'
import { shortHash } from './short-hash.ts'
import { SignSheet } from './sign-sheet.tsx'

/** Under what name, when and with what meaning the shift was signed, and whether what was signed is still what is here. */
export const SignatureCard = ({ plan, page, signature, isProvisional }: { plan: LabPlan; page: ShiftPage; signature: Signature; isProvisional: boolean }) => {
  const { archive, person } = useApp()
  const all = useWords()
  const words = all.shift.signed
  const [isUnchanged, setIsUnchanged] = useState<boolean>()
  const [isOpen, setIsOpen] = useState(false)
  useEffect(() => void archive().then(async (it) => setIsUnchanged((await it.sha256(signature.digestText)) === signature.data.digest)), [signature.digestText])
  const { data } = signature
  const { when } = useDates(plan.timeZone)
  const isSigner = person.value !== null && person.value === signature.person
  const names = new Map<string, number>()
  for (const { code } of data.openItems) names.set(code, (names.get(code) ?? 0) + 1)
  const nameOf = (code: string): string =>
    code === ownExceptionCode ? words.ownException : code === 'exceptionHandedOver' ? words.exceptionHandedOver : (all.shift.blockers.what[code as Blocker['code']] ?? code)
  return (
    <>
      {isUnchanged === false ? <Banner kind="stop" title={words.changed} /> : null}
      <Card title={isProvisional ? words.provisional : words.title} beside={when(signature.time)}>
        <p class="meaning">{all.shift.sign.meaning}</p>
        <p><strong>{personName(plan, signature.person)}</strong></p>
        {data.remark ? <p class="said">{data.remark}</p> : null}
        {names.size ? (
          <div>
            <p class="small quiet">{words.names}</p>
            <ul class="names small">{[...names].map(([code, count]) => <li key={code}>{nameOf(code)} ({count})</li>)}</ul>
          </div>
        ) : null}
        <p class="spread small"><span class="quiet">{all.shift.sign.digest}</span><code>{shortHash(data.digest)}</code></p>
        {isProvisional ? <p>{words.provisionalMore}</p> : data.provisional ? <p class="small quiet">{words.confirmed}</p> : null}
        <p class="small quiet">{words.asSigned}</p>
        {isUnchanged ? <p class="small quiet">{words.unchanged}</p> : null}
        {isProvisional && isSigner ? <Button wide onPress={() => setIsOpen(true)}>{all.shift.sign.confirm}</Button> : null}
      </Card>
      {signature.ownNotCountersigned.length ? <Banner kind="warn" title={words.ownOpen((plan.onCall !== undefined && plan.onCall !== signature.person && personOf(plan, plan.onCall)?.name) || words.anotherSupervisor)} /> : null}
      {isOpen && signature.person ? <SignSheet plan={plan} page={page} by={signature.person} again={signature} onDone={() => setIsOpen(false)} /> : null}
    </>
  )
}
