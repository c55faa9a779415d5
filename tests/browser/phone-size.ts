/** The smallest phone that the app is made for. */
export const phoneSize = { width: 360, height: 740 } as const
