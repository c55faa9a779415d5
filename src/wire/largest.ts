/** What one push may hold; a plan of many machines is larger than any reading, so it has a limit of its own. */
export const largestPush = { entries: 200, bytes: 1 << 20, bytesPerEntry: 1 << 16, bytesPerPlan: 1 << 18 } as const
export const largestPull = 500
