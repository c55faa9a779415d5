import type { NoAnswer } from '../../office.ts'
import type { Translation } from '../translation.ts'
import type { enrol as english } from '../en/enrol.ts'

const minutes = (seconds: number): string => (seconds < 90 ? `${Math.ceil(seconds)} segundos` : `${Math.ceil(seconds / 60)} minutos`)

const noAnswer = ({ code, retryAfter, detail }: NoAnswer): string => {
  switch (code) {
    case 'offline':
      return 'No se llega al servidor. No se pierde nada; pruebe otra vez cuando vuelva la red.'
    case 'codeUnknown':
      return 'No se conoce este código. Compárelo con la pantalla del supervisor o pida otro.'
    case 'codeUsed':
      return 'Este código ya se usó o caducó. Pida otro al supervisor.'
    case 'passphrase':
      return 'La frase de contraseña no es correcta. Tecléela otra vez.'
    case 'tooMany':
      return `Demasiados intentos. Espere ${minutes(retryAfter ?? 60)} y pruebe otra vez.`
    case 'digits':
      return 'Las cifras no coinciden. Compare otra vez las dos pantallas; si difieren, no confirme.'
    case 'presence':
      return 'Identifíquese otra vez con su frase de contraseña.'
    case 'forbidden':
      return 'Solo un supervisor puede hacer esto.'
    case 'notConfirmed':
      return 'Un supervisor aún no ha confirmado este teléfono.'
    case 'revoked':
    case 'retired':
    case 'quarantined':
      return 'Este teléfono ya no es del laboratorio. Lo que contiene aún se puede entregar como archivo.'
    case 'notDemo':
      return 'Solo se puede borrar un laboratorio inventado.'
    case 'lastSupervisor':
      return 'No se puede quitar al último supervisor.'
    case 'full':
      return 'El disco del servidor está lleno. Lo que usted registró está a salvo en este teléfono.'
    case 'busy':
    case 'timeout':
      return 'El servidor está ocupado. Pruebe otra vez en un minuto; no se pierde nada.'
    case 'unreadable':
      return 'No se pudo leer la respuesta. Puede que la aplicación o el servidor no estén al día.'
    default:
      return `El servidor se negó (${code}${detail ? `, ${detail}` : ''}). No se pierde nada; avise al supervisor si se repite.`
  }
}

export const enrol: Translation<typeof english> = {
  homeFirst: 'Ponga antes la aplicación en la pantalla de inicio',
  homeFirstMore: 'Compartir y después Añadir a pantalla de inicio; ábrala allí y teclee el código. En este teléfono la aplicación de la pantalla de inicio tiene su propio almacén: lo que se registre aquí, en el navegador, no pasa a ella, y puede borrarse tras siete días sin uso.',
  title: 'Dar de alta este teléfono en el laboratorio',
  first: {
    title: 'Un laboratorio nuevo',
    more: 'Usted es su primer supervisor. El código está en la terminal donde se arrancó el servidor.',
    name: 'Su nombre',
    passphrase: 'Una frase de contraseña propia',
    passphraseHint: 'Al menos 8 caracteres. Con ella se firman los turnos; nadie la puede consultar.',
  },
  more: 'Pida un código a un supervisor: deja entrar a este teléfono una vez, en diez minutos.',
  code: 'Código',
  codeHint: 'Diez letras y cifras, o abra el código QR con la cámara.',
  codeFromAddress: 'El código vino con la dirección.',
  deviceName: 'Nombre de este teléfono',
  deviceNameHint: 'Como lo llama la gente: Sala de máquinas 1.',
  go: 'Seguir',
  asking: 'Preguntando al servidor',
  needed: 'Hace falta.',
  short: 'Al menos 8 caracteres.',
  waitingTitle: 'Compare estas cifras',
  waiting: 'Tienen que estar también en la pantalla del supervisor. Cuando el supervisor confirme, este teléfono sigue solo.',
  ended: {
    out: { title: 'Este teléfono se retiró del laboratorio', more: 'Pregunte al supervisor por qué. Para volver a entrar, pida un código nuevo. Lo que no había enviado se puede entregar como archivo.' },
    unknown: { title: 'El servidor no conoce este teléfono', more: 'Pida al supervisor un código nuevo. Lo que este teléfono no había enviado se conserva y se puede guardar como archivo.' },
  },
  offlineTitle: 'Sin red',
  offline: 'La primera vez, este teléfono tiene que llegar al servidor del laboratorio.',
  tryAgain: 'Probar otra vez',
  noAnswer,
  start: {
    title: '¿Con qué quiere empezar?',
    demo: 'El laboratorio de prueba',
    demoMore: 'Máquinas, personas y lecturas inventadas, para aprender. Se borra de un toque.',
    file: 'Un plan de laboratorio de un archivo',
    fileMore: 'JSON, como lo exporta esta aplicación.',
    join: 'Esperando el plan del laboratorio',
    joinMore: 'Llega del servidor con el primer intercambio.',
    loading: (done, of) => `Escribiendo el laboratorio de prueba · ${done} de ${of}`,
    problems: 'Este archivo no es un plan de laboratorio válido. No se cambió nada.',
    notJson: 'Este archivo no es JSON.',
    moreProblems: (count) => `y ${count} más`,
  },
  who: {
    title: '¿Quién tiene el teléfono?',
    more: 'Su nombre queda en todo lo que registre.',
    pin: 'PIN',
    newPin: 'Elija un PIN para este teléfono',
    newPinHint: 'Al menos 4 cifras. Dice quién tecleó; no es un secreto frente a un ladrón.',
    supervisor: 'Supervisor',
    operator: 'Operador',
    goOn: 'Seguir',
    wrong: (left) => (left > 0 ? `No es este PIN. ${left === 1 ? 'Queda 1 intento' : `Quedan ${left} intentos`} antes de una pausa.` : 'No es este PIN.'),
    wait: (seconds) => `Demasiados intentos. Espere ${minutes(seconds)}.`,
    tooShort: 'Al menos 4 cifras.',
  },
}
