import { Refusal } from '../refusal.ts'

/** Titrant less blank, in mL. A blank that is larger means that one of the two was misread: no concentration is negative. */
export const netMillilitres = ({ titrant, blank, mustBeMore = false }: { titrant: number; blank: number; mustBeMore?: boolean }): number => {
  const net = titrant - blank
  if (net < 0 || (mustBeMore && net === 0))
    throw new Refusal({ code: 'noAnswer', field: 'titrantMillilitres', value: titrant, allowed: `${mustBeMore ? 'more than' : 'at least'} the blank of ${blank} mL` })
  return net
}
