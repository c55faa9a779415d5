import type { Translation } from '../translation.ts'
import type { board as english } from '../en/board.ts'

const count = (number: number, one: string, many: string): string => `${number} ${number === 1 ? one : many}`

export const board: Translation<typeof english> = {
  title: 'Panel',
  held: 'Retenida',
  out: 'Fuera de límites',
  late: 'Con retraso',
  due: 'Pendiente',
  next: 'Después',
  tally: { held: 'retenidas', out: 'fuera', late: 'con retraso', due: 'pendientes' },
  allWell: 'Nada está retenido, fuera, con retraso ni pendiente.',
  missed: (number) => `${count(number, 'vez omitido', 'veces omitido')}`,
  mixing: 'Mezclando ahora',
  mixingNone: 'Ningún baño se está mezclando.',
  shift: (name) => `${name} hasta ahora`,
  inTime: 'a tiempo',
  lateDone: 'con retraso',
  missedSoFar: 'omitidos',
  outSoFar: 'fuera',
  toShift: 'A la página del turno',
  unsigned: (name, day) => `${name}, ${day}: sin firmar`,
  incidents: (number) => `${count(number, 'incidente', 'incidentes')} por reconocer`,
  newest: (time) => `última anotación ${time}`,
  stale: 'No se llega al servidor: lo que otros teléfonos hayan enviado desde entonces no está aquí.',
}
