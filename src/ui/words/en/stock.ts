export const stock = {
  onHand: 'On hand',
  counted: (when: string): string => `Counted ${when}`,
  taken: (entries: number): string => (entries === 0 ? 'Nothing taken since' : `Taken since, ${entries} ${entries === 1 ? 'entry' : 'entries'}`),
  lot: 'Lot on the shelf',
  short: (left: string): string => `By the last count ${left} are left: it does not cover this.`,
  expired: (day: string): string => `To be used until ${day}. That day is past.`,
  expiredShort: 'out of date',
  low: 'Time to order more.',
  lowShort: 'order more',
  negative: 'More was taken than was counted. Count it again.',
  countAgain: 'count again',
  shortOf: (names: string): string => `By the last count there is not enough of: ${names}.`,
}
