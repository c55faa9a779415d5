import type { Translation } from '../translation.ts'
import { fingerprint } from '../fingerprint.ts'
import { saidByFingerprint } from './safety/said.ts'
import type { safety as english } from '../en/safety.ts'

/** Nobody competent has checked the cautions in Spanish yet, which `translation` says wherever one is shown. */
const deferral =
  'Esto no sustituye a la ficha de datos de seguridad del producto, a la etiqueta, a las normas locales ni a una persona habilitada o formada. Donde digan otra cosa, deciden ellas.'

export const safety: Translation<typeof english> = {
  title: 'Fichas de seguridad',
  kinds: { mixture: 'Baños y mezclas', chemical: 'Productos químicos', gas: 'Gases', operation: 'Trabajos' },
  before: 'Antes de echar',
  noCard: (card) => `Esta versión no tiene la ficha de seguridad «${card}». Siga solo según la ficha de datos de seguridad del propio producto y con quien esté formado para ello.`,
  locked: 'Desbloquee antes el teléfono: una precaución la confirma una persona.',
  amountAfter: 'La cantidad aparece cuando se ha mantenido pulsada cada línea de arriba.',
  deferral,
  translation: 'Traducción aún no comprobada por una persona competente. En caso de duda valen la ficha de datos de seguridad y el texto inglés.',
  say: (english) => saidByFingerprint[fingerprint(english)] ?? english,
  own: 'Escrito por el propio laboratorio. Nadie de fuera ha comprobado estas palabras.',
  ownLine: 'palabras del propio laboratorio',
  ownTitle: 'Del propio laboratorio',
  ownVersion: (version) => `Palabras del propio laboratorio, versión ${version}.`,
  signal: { Danger: 'Peligro', Warning: 'Atención' },
  sections: {
    never: 'No debe pasar nunca',
    wear: 'Protección y aire',
    firstAid: 'Primeros auxilios',
    more: 'Derrame, almacenamiento, códigos de la etiqueta',
    spill: 'Derrame',
    storage: 'Almacenamiento',
    hazards: 'Indicaciones de peligro (SGA de la ONU), con nuestras palabras',
    regional: 'Indicaciones regionales, no están en la lista de la ONU',
    precautions: 'Consejos de prudencia (SGA de la ONU), con nuestras palabras',
    limits: 'Límites en el aire',
  },
  version: (version, source) => `Versión ${version}. ${source}`,
  pictograms: {
    GHS01: 'Bomba explotando: explosivo', GHS02: 'Llama: se inflama', GHS03: 'Llama sobre círculo: aviva el fuego', GHS04: 'Bombona de gas: gas a presión', GHS05: 'Corrosión: quema piel y ojos, ataca el metal',
    GHS06: 'Calavera: venenoso', GHS07: 'Signo de exclamación: nocivo, irrita', GHS08: 'Peligro para la salud: daño grave con el tiempo', GHS09: 'Medio ambiente: venenoso para la vida acuática',
  },
}
