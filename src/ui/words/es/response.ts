import type { Translation } from '../translation.ts'
import type { response as english } from '../en/response.ts'

export const response: Translation<typeof english> = {
  title: 'Cómo responde este baño',
  link: 'Cómo responde este baño',
  more: (least, most) => `Cambio observado entre cambio calculado. La dosis se divide por él, entre ${least} y ${most}. Las respuestas viejas pierden peso; un lote o un baño nuevo empieza en 1.`,
  none: 'Aún no se ha aprendido nada',
  noneMore: 'Llega con la primera adición que se vuelva a leer después de mezclar.',
  from: (count) => (count === 0 ? 'Ninguna respuesta cuenta: se calcula como dice el modelo.' : `De ${count} ${count === 1 ? 'respuesta' : 'respuestas'} de este lote.`),
  change: (predicted, observed) => `esperado ${predicted}, resultó ${observed}`,
  kinds: {
    learned: 'Aprendida',
    tooSmall: 'Demasiado pequeña para decir algo, no se aprende',
    unclear: 'No está clara, no se aprende',
    mixedDoses: 'Se echó también otra cosa, no se aprende',
    outOfBounds: 'Fuera de lo posible: detenido, no se aprende',
  },
  stopped: (ratio) => `Respondió ${ratio} veces lo esperado. No entra nada más de este lote.`,
  stoppedMore: 'Compruebe el bidón y su etiqueta, el volumen del baño y el análisis. Cuando se encuentre, ponga a 1 diciendo qué era.',
  wasReset: 'Puesto a 1',
  newBath: 'baño nuevo conectado',
  reset: 'Poner a 1…',
  resetTitle: (material) => `Poner a 1: ${material}`,
  resetMore: 'Lo aprendido hasta ahora deja de contar. El motivo queda en el registro.',
  why: '¿Por qué? ¿Qué se encontró?',
  resetSave: 'Poner a 1',
}
