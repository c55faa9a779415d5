/** Fifty-two bits of a sentence: two different ones of a book have the same once in some 10¹⁰ books. It guards against chance, not against intent. */
export const fingerprint = (text: string): string => {
  let first = 0x811c9dc5
  let second = 0x9747b28c
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at)
    first = Math.imul(first ^ code, 0x01000193)
    second = Math.imul(second ^ code, 0x5bd1e995)
    second ^= second >>> 15
  }
  return (first >>> 0).toString(36) + (second >>> 12).toString(36)
}
