import type { StockNow } from '../../projections/stock.ts'
import { useWords } from '../app-context.ts'
import { shownAmount } from '../exception/amount.ts'
import { Banner } from '../parts/banner.tsx'
import { Card, Row, Rows } from '../parts/card.tsx'
import { useDates } from '../use-dates.ts'
import { useStocks } from './use-stocks.ts'

const amountText = (amount: number, unit: StockNow['unit']): string => {
  const shown = shownAmount(Math.abs(amount), unit)
  return `${amount < 0 ? '−' : ''}${shown.text} ${shown.unit}`
}

/** What is left of a material in force, from its last count and what the record took off it. */
export const StockCard = ({ material }: { material: string }) => {
  const words = useWords().stock
  const { when } = useDates()
  const stock = useStocks().get(material)
  if (!stock) return null
  return (
    <Card title={words.onHand} beside={amountText(stock.onHand, stock.unit)}>
      <StockWarnings stock={stock} />
      <Rows>
        <Row what={words.counted(when(stock.countedAt))} value={amountText(stock.counted, stock.unit)} />
        <Row what={words.taken(stock.entries.length)} value={amountText(stock.taken, stock.unit)} />
        {stock.lot ? <Row what={words.lot} value={stock.lot} /> : null}
      </Rows>
    </Card>
  )
}

/** `needed`: in the unit of the stock, what is about to be poured. */
export const StockWarnings = ({ stock, needed }: { stock: StockNow | undefined; needed?: number }) => {
  const words = useWords().stock
  if (!stock) return null
  const isShort = needed !== undefined && needed > stock.onHand
  return (
    <>
      {isShort ? <Banner kind="warn" title={words.short(amountText(stock.onHand, stock.unit))} /> : null}
      {stock.isExpired ? <Banner kind="warn" title={words.expired(stock.expires ?? '')} /> : null}
      {needed === undefined && stock.onHand < 0 ? <Banner kind="warn" title={words.negative} /> : null}
      {needed === undefined && stock.onHand >= 0 && stock.isLow ? <Banner kind="warn" title={words.low} /> : null}
    </>
  )
}

/** In a list: how much, and what is not well with it. */
export const StockValue = ({ stock }: { stock: StockNow }) => {
  const words = useWords().stock
  const marks = [stock.isExpired ? words.expiredShort : '', stock.onHand < 0 ? words.countAgain : stock.isLow ? words.lowShort : ''].filter(Boolean)
  return (
    <span class="small">
      {amountText(stock.onHand, stock.unit)}
      {marks.length ? <><br /><strong>{marks.join(', ')}</strong></> : null}
    </span>
  )
}
