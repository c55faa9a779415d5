/**
 * The density that stands when its last figure is keyed, so that the next step comes without a press: `0.31`, `.31`, or the figures alone as some
 * densitometers show them, `031` and `131`. Undefined while more can come.
 *
 * @example wholeDensity('131', 2) // '1.31'
 */
export const wholeDensity = (keyed: string, decimals: number): string | undefined => {
  const [whole = '', fraction] = keyed.replace(',', '.').split('.')
  if (!/^\d*$/.test(whole) || (fraction !== undefined && !/^\d*$/.test(fraction))) return undefined
  if (fraction !== undefined) return decimals > 0 && fraction.length === decimals ? `${whole || '0'}.${fraction}` : undefined
  if (decimals === 0 || whole.length !== decimals + 1) return undefined
  return `${whole.slice(0, 1)}.${whole.slice(1)}`
}
