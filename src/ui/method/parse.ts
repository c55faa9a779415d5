/** A number as anybody writes it; undefined where it is none. */
export const numberOf = (text: string | undefined): number | undefined => {
  const plain = (text ?? '').trim().replaceAll('−', '-').replace(',', '.')
  return /^[-+]?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : undefined
}
