import { renderSVG } from 'uqr'
import type { LabPlan } from '../../plan/lab-plan.ts'
import type { ShiftPage } from '../../projections/shift-page.ts'
import type { Signature } from '../../projections/shift-signatures.ts'
import { useApp, useWords } from '../app-context.ts'
import { timeText } from '../format.ts'
import { useDates } from '../use-dates.ts'
import { personName } from './line-text.ts'
import { shiftPath } from './shift-place.ts'

/** The head of the printed page: whose shift, who signed it and over what, and the way back to the record. */
export const PrintHead = ({ plan, page, signed }: { plan: LabPlan; page: ShiftPage; signed: { signature: Signature; isProvisional: boolean } | undefined }) => {
  const { now } = useApp()
  const all = useWords()
  const words = all.shift.print
  const { span } = page
  const { longDate } = useDates(plan.timeZone)
  const when = (time: number): string => `${longDate(time)} ${timeText(time, plan.timeZone)}`
  const address = `${location.origin}${shiftPath(span)}`
  const signature = signed?.signature
  return (
    <header class="print-head">
      <div>
        <p class="laboratory">{plan.name}{plan.demo ? ` · ${all.shell.demo}` : ''}</p>
        <p class="shift-name">{span.shift.name}, {longDate(span.from)}, {all.shift.span(timeText(span.from, plan.timeZone), timeText(span.to, plan.timeZone))}</p>
        {signature ? (
          <>
            <p><strong>{signed.isProvisional ? all.shift.signed.provisional : all.shift.signed.title}: {personName(plan, signature.person)}, {when(signature.time)}</strong></p>
            <p>{all.shift.sign.meaning}</p>
            <p>{words.digest}: <code>{signature.data.digest}</code></p>
          </>
        ) : (
          <p><strong>{words.unsigned}</strong></p>
        )}
        <p class="quiet">{words.made(when(now.value))}</p>
      </div>
      <figure>
        <img alt="" src={`data:image/svg+xml,${encodeURIComponent(renderSVG(address, { border: 2 }))}`} />
        <figcaption>{words.open}<br />{address}</figcaption>
      </figure>
    </header>
  )
}
