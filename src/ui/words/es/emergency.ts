import type { Translation } from '../translation.ts'
import type { emergency as english } from '../en/emergency.ts'

export const emergency: Translation<typeof english> = {
  title: 'Emergencia',
  call: 'A quién llamar',
  eyewash: 'Lavaojos y ducha',
  assembly: 'Punto de reunión',
  light: 'Luz y película abierta',
}
