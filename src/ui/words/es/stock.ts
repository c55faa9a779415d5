import type { stock as english } from '../en/stock.ts'
import type { Translation } from '../translation.ts'

export const stock: Translation<typeof english> = {
  onHand: 'Disponible',
  counted: (when) => `Contado ${when}`,
  taken: (entries) => (entries === 0 ? 'Desde entonces no se tomó nada' : `Tomado desde entonces, ${entries} ${entries === 1 ? 'entrada' : 'entradas'}`),
  lot: 'Lote en la estantería',
  short: (left) => `Según el último recuento quedan ${left}: no alcanza para esto.`,
  expired: (day) => `Se podía usar hasta el ${day}. Ese día ya pasó.`,
  expiredShort: 'caducado',
  low: 'Es hora de pedir más.',
  lowShort: 'pedir más',
  negative: 'Se tomó más de lo contado. Cuéntelo otra vez.',
  countAgain: 'contar otra vez',
  shortOf: (names) => `Según el último recuento no hay bastante de: ${names}.`,
}
