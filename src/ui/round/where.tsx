import type { Check } from '../../plan/check.ts'
import { placeOf } from '../../plan/find.ts'
import { useApp, useWords } from '../app-context.ts'
import { useCountdown } from '../countdown.ts'
import { Banner } from '../parts/banner.tsx'
import { LinkButton } from '../parts/button.tsx'
import { clockText } from '../parts/timer-ring.tsx'
import type { Asked } from './asked.ts'

/** Where one must stand, with what in hand, and what an experienced hand knows. */
export const Where = ({ check, asked }: { check: Check; asked: Asked }) => {
  const { plan } = useApp()
  const words = useWords().round.check
  const { station } = placeOf(plan.value!.plan, check.station)
  const left = useCountdown(asked.mixingUntil)
  return (
    <div class="where">
      {asked.mixingUntil !== undefined && left > 0 ? <Banner kind="warn" title={words.mixing(clockText(left / 1000))} /> : null}
      <div class="spread at-bench">
        <p>
          <strong>{station.name}</strong>
          {check.kind === 'reading' ? ` · ${check.instrument.name}` : ''}
          {asked.as === 'recheck' && !(left > 0) ? ` · ${words.recheck}` : ''}
        </p>
        {check.kind === 'reading' && check.method ? <LinkButton kind="plain" href={`/method/${check.id}`}>{words.method}</LinkButton> : null}
      </div>
      {asked.as === 'repeat' ? <p class="flagged">{words.repeatHint}</p> : null}
      {check.how && asked.as !== 'repeat' ? <p class="small quiet">{check.how}</p> : null}
      {check.darkWork ? <p class="flagged">{words.dark}</p> : null}
    </div>
  )
}
