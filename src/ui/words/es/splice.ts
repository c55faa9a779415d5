import type { Translation } from '../translation.ts'
import type { splice as english } from '../en/splice.ts'

export const splice: Translation<typeof english> = {
  title: 'Empalme',
  window: 'Tiempo para el empalme',
  sum: (reserve, speed) => `${reserve} en el acumulador a ${speed}`,
  more: 'Empalme preparado y comprobado de antemano, pinza a mano. Sujete la cola, pulse, empalme, compruébelo, suelte.',
  hold: 'Cola sujeta: empezar',
  reserve: 'Película en el acumulador',
  otherReserve: 'El acumulador no está lleno',
  noReserve: 'Teclee cuánta película tiene el acumulador.',
  stands: 'La máquina no toma película',
  standsMore: 'Parada no se agota nada. Teclee la velocidad en la máquina cuando esté en marcha.',
  states: {
    ample: 'Empalme',
    hurry: 'Deprisa',
    lastSeconds: 'No empiece ya un empalme: suelte o frene la máquina',
    empty: 'El acumulador está vacío. Suelte o pare la alimentación antes de que se rompa la película',
    unknown: 'Nadie sabe cuánto lleva sujeta. Mire el acumulador',
  },
  released: 'Empalmado y suelto',
  over: 'Se acabó',
  writeDown: 'Anotarlo en el registro',
  incident: 'El acumulador se vació durante un empalme.',
}
