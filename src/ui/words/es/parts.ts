import type { Translation } from '../translation.ts'
import type { parts as english } from '../en/parts.ts'

export const parts: Translation<typeof english> = { hold: 'Mantenga pulsado hasta que la línea se llene' }
