/** The first sixteen figures in fours: enough to compare by eye, and on paper. */
export const shortHash = (hash: string): string => hash.slice(0, 16).replaceAll(/(.{4})(?=.)/g, '$1 ')
