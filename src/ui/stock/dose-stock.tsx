import { StockWarnings } from './stock-card.tsx'
import { useStocks } from './use-stocks.ts'

/** Beside a dose: whether what was counted covers it, and may still be used. `needed` in mL or g. */
export const DoseStock = ({ material, needed }: { material: string; needed: number }) => <StockWarnings stock={useStocks().get(material)} needed={needed} />
