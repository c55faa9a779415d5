import { useEffect, useMemo, useState } from 'preact/hooks'
import type { Lab } from '../../projections/lab.ts'
import { stockOf, type StockNow } from '../../projections/stock.ts'
import { useApp } from '../app-context.ts'

const none: ReadonlyMap<string, StockNow> = new Map()

/** What is left of each material that is counted, by its id. What was poured before the days in memory is read from the store, and comes a moment later. */
export const useStocks = (isWanted = true): ReadonlyMap<string, StockNow> => {
  const { lab, plan, now, archive } = useApp()
  const inForce = plan.value?.plan
  const { log } = lab.value
  const [whole, setWhole] = useState<Lab>()
  const counts = isWanted ? (inForce?.materials ?? []).flatMap(({ stock }) => (stock ? [Date.parse(stock.countedAt)] : [])) : []
  const needsWhole = log.linesBefore > 0 && counts.some((at) => at < (log.ledger.lines[0]?.time ?? Number.POSITIVE_INFINITY))
  useEffect(() => {
    if (!needsWhole) return
    let isAwaited = true
    void archive().then((it) => it.whole()).then((it) => {
      if (isAwaited) setWhole(it)
    })
    return () => {
      isAwaited = false
    }
  }, [needsWhole, lab.value])
  const from = needsWhole ? whole : log
  const minute = Math.floor(now.value / 60_000)
  return useMemo(() => {
    if (!counts.length || !inForce || !from) return none
    return new Map(inForce.materials.flatMap((material) => {
      const stock = stockOf(from.ledger, from.state.plans, inForce, material, now.value)
      return stock ? [[material.id as string, stock] as const] : []
    }))
  }, [from, lab.value, inForce, isWanted, minute])
}
