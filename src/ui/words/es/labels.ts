import type { Translation } from '../translation.ts'
import type { labels as english } from '../en/labels.ts'

export const labels: Translation<typeof english> = {
  title: 'Escanear una etiqueta de tanque',
  scan: 'Etiqueta',
  here: 'En el tanque',
  scanAt: (station) => `Etiqueta en ${station}`,
  picture: 'Lo que ve la cámara',
  aim: 'Tenga la etiqueta dentro del marco.',
  again: 'Probar otra vez la cámara',
  wrong: {
    notALabel: 'Este código no es una etiqueta de tanque. Se sigue mirando.',
    otherLaboratory: 'Esta etiqueta es de otra dirección. Imprímala de nuevo desde el plan de este laboratorio.',
    laterVersion: 'Esta etiqueta es más nueva que esta aplicación. Tome antes la versión nueva.',
  },
  notInPlan: 'El plan en vigor no tiene este puesto. Puede ser una etiqueta vieja: imprímala de nuevo desde el plan.',
  otherPlace: (found, wanted) => `Esta es la etiqueta de ${found}. Este control se hace en ${wanted}.`,
  goThere: (place) => `Ir a ${place}`,
  problems: {
    denied: { title: 'La cámara no tiene permiso', more: 'Déselo a esta aplicación en los ajustes del navegador. El control se puede teclear sin ella; entonces no consta como hecho en el tanque.' },
    none: { title: 'Este teléfono no da cámara', more: 'El control se puede teclear sin ella; entonces no consta como hecho en el tanque.' },
    busy: { title: 'Otra aplicación tiene la cámara', more: 'Ciérrela y pruebe otra vez. El control se puede teclear sin ella.' },
    fault: { title: 'La cámara falló', more: 'Pruebe otra vez. El control se puede teclear sin ella.' },
  },
  dark: {
    title: 'La cámara ilumina toda la pantalla',
    lit: 'Aquí no hay película abierta: abrir la cámara',
  },
  sheetTitle: 'Etiquetas de tanque',
  sheetMore: (address) => `En A4, ocho por página. Plastifíquelas y póngalas donde uno se para a leer. Cada código lleva una dirección de este laboratorio: ${address}`,
  local: 'Esta dirección solo funciona en esta máquina. Abra la aplicación con la dirección que usan los teléfonos e imprima desde allí.',
  each: 'Una etiqueta para',
  eachStation: 'Cada puesto',
  eachCheck: 'Cada control',
  machine: 'Máquina',
  allMachines: 'Todas las máquinas',
  count: (count) => `${count} ${count === 1 ? 'etiqueta' : 'etiquetas'}`,
  print: 'Imprimir',
  codeOf: (title) => `Código de ${title}`,
}
