export const time = {
  /** A span as one says it: `40 s`, `4 min`, `2 h 10 min`, `3 days`. */
  span: (milliseconds: number): string => {
    const seconds = Math.round(Math.abs(milliseconds) / 1000)
    if (seconds < 60) return `${seconds} s`
    const minutes = Math.round(seconds / 60)
    if (minutes < 60) return `${minutes} min`
    const hours = Math.floor(minutes / 60)
    if (hours >= 48) return `${Math.round(hours / 24)} days`
    return minutes % 60 ? `${hours} h ${minutes % 60} min` : `${hours} h`
  },
  ago: (span: string): string => `${span} ago`,
}
