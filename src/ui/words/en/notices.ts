/** What a phone says that lies in a pocket. */
export const notices = {
  due: (machine: string, count: number): string => `${machine}: ${count === 1 ? 'a check is due' : `${count} checks are due`}`,
  mixed: (check: string): string => `Mixed. Re-check: ${check}`,
  toConfirm: (check: string): string => `Read again to confirm: ${check}`,
  more: (names: readonly string[], others: number): string => (others > 0 ? `${names.join(', ')} and ${others} more` : names.join(', ')),
  callMe: 'Call me with a notice when it is time',
}
