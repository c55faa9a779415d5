import type { Translation } from '../translation.ts'
import type { time as english } from '../en/time.ts'

export const time: Translation<typeof english> = {
  span: (milliseconds) => {
    const seconds = Math.round(Math.abs(milliseconds) / 1000)
    if (seconds < 60) return `${seconds} s`
    const minutes = Math.round(seconds / 60)
    if (minutes < 60) return `${minutes} min`
    const hours = Math.floor(minutes / 60)
    if (hours >= 48) return `${Math.round(hours / 24)} días`
    return minutes % 60 ? `${hours} h ${minutes % 60} min` : `${hours} h`
  },
  ago: (span) => `hace ${span}`,
}
