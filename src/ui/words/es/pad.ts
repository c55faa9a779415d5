import type { Translation } from '../translation.ts'
import type { pad as english } from '../en/pad.ts'

export const pad: Translation<typeof english> = { pad: 'Teclado numérico', erase: 'Borrar la última cifra', point: 'Punto decimal', minus: 'Cambiar el signo' }
