import type { TitrantNow } from '../../rounds/method/titrants.ts'
import { useWords } from '../app-context.ts'
import { numberText } from '../format.ts'
import { Banner } from '../parts/banner.tsx'
import { LinkButton } from '../parts/button.tsx'
import { useDates } from '../use-dates.ts'

const decimals = 4

/** With which strength of the titrant it is worked out, and until when that counts. */
export const TitrantLines = ({ titrants }: { titrants: readonly TitrantNow[] }) => {
  const words = useWords().method.titrant
  const { date } = useDates()
  return (
    <>
      {titrants.map(({ field, check, value, expiresAt, state }) => {
        const shown = value === undefined ? '' : numberText(value, decimals)
        if (state === 'good') return <p key={field} class="small quiet">{words.good(check.name, shown, expiresAt === undefined ? '' : date(expiresAt))}</p>
        if (state === 'outOfLimits') return <Banner key={field} kind="warn" title={words.outOfLimits(check.name, shown)} />
        return (
          <Banner key={field} kind="stop" title={state === 'expired' ? words.expired(check.name, date(expiresAt!)) : words.never(check.name)}>
            <LinkButton href={`/method/${check.id}`}>{words.standardise}</LinkButton>
          </Banner>
        )
      })}
    </>
  )
}
