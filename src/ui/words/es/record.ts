import type { Translation } from '../translation.ts'
import type { record as english } from '../en/record.ts'

const count = (number: number, one: string, many: string): string => `${number} ${number === 1 ? one : many}`

export const record: Translation<typeof english> = {
  title: 'El registro como archivos',
  span: 'Qué tiempo',
  spans: { shift: 'Este turno', day: 'Las últimas 24 horas', week: 'Los últimos 7 días', all: 'Todo', days: 'Los días que elija' },
  from: 'Desde la mañana del',
  to: 'Hasta el final del',
  daysMissing: 'Elija los dos días; el último no antes que el primero.',
  csv: 'Tabla (CSV)',
  csvMore: 'Para una hoja de cálculo: cada anotación con su huella y su firma.',
  json: 'Registro (JSON)',
  jsonMore: 'Cada anotación como la selló su teléfono, con las claves: para guardar, comprobar o devolver. Las fotos se nombran en él y se quedan donde están.',
  preparing: 'Un momento',
  nothing: 'En ese tiempo no hay ninguna anotación.',
  bring: 'Devolver un registro',
  bringMore: 'A un servidor restaurado de una copia vieja le falta lo que vino después. Una exportación que lo contenga se lo devuelve donde sus teléfonos ya no pueden. Nada se duplica ni se sobrescribe.',
  choose: 'Elegir un archivo',
  looking: 'Mirando el archivo',
  problem: (problem) => (problem.code === 'notJson' ? 'Este archivo no es una exportación: no es JSON.' : `Este archivo no es la exportación de un registro o turno: deja de serlo en «${problem.path}».`),
  offline: 'No se llega al servidor. Hay que saber antes lo que tiene, para no duplicar nada.',
  again: 'Probar otra vez',
  found: 'Lo que se encontró',
  of: (laboratory) => `Registro de ${laboratory}`,
  entries: (entries, devices) => `${count(entries, 'anotación', 'anotaciones')} de ${count(devices, 'teléfono', 'teléfonos')}`,
  here: 'Ya en el registro, exactamente iguales',
  missing: 'Faltan aquí y están sanas: se pueden devolver',
  left: 'Se dejan fuera',
  why: {
    hash: 'cambiadas desde que se sellaron',
    signature: 'no las firmó su teléfono',
    unknownDevice: 'de un teléfono que este laboratorio no conoce',
    conflict: 'en su lugar hay otra anotación',
    gap: 'falta la anotación anterior',
  },
  nothingMissing: 'Todo lo de este archivo está en el registro. No hay nada que hacer.',
  save: (number) => `Devolver ${count(number, 'anotación', 'anotaciones')}`,
  done: (number) => (number === 1 ? 'Se devolvió 1 anotación y está en el registro.' : `Se devolvieron ${number} anotaciones y están en el registro.`),
  refused: (phone, code) => `El servidor se detuvo en ${phone}: ${code}.`,
  cutOff: 'No se pudo llegar al servidor hasta el final. Hágalo otra vez: lo que ya está se queda como está.',
}
