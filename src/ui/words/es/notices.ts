import type { Translation } from '../translation.ts'
import type { notices as english } from '../en/notices.ts'

export const notices: Translation<typeof english> = {
  due: (machine, count) => `${machine}: ${count === 1 ? 'toca un control' : `tocan ${count} controles`}`,
  mixed: (check) => `Mezclado. Volver a leer: ${check}`,
  toConfirm: (check) => `Leer otra vez para confirmar: ${check}`,
  more: (names, others) => (others > 0 ? `${names.join(', ')} y ${others} más` : names.join(', ')),
  callMe: 'Avisarme cuando sea la hora',
}
