import type { Translation } from '../translation.ts'
import type { saving as english } from '../en/saving.ts'

export const saving: Translation<typeof english> = {
  saved: 'Guardado en este teléfono',
  undo: 'Deshacer',
  undoWhy: 'Deshecho en cuanto se guardó',
  problems: {
    full: 'Este teléfono está lleno. Esta anotación no se guardó; todo lo anterior, sí. Haga sitio en el teléfono y guarde otra vez.',
    databaseLost: 'El teléfono soltó su almacén. Esta anotación no se guardó; todo lo anterior, sí. Cierre la aplicación, ábrala y guarde otra vez.',
    corrupt: 'El almacén de este teléfono ya no se puede leer. Esta anotación no se guardó. Escríbala en papel y exporte desde el menú lo que aún se pueda leer.',
    unavailable: 'Este navegador no guarda nada aquí (modo privado, o almacenamiento desactivado). No se puede registrar nada. Use una ventana normal u otro teléfono.',
    newerVersion: 'Hay abierta en otra ventana una versión más nueva de la aplicación. Esta anotación no se guardó. Cierre esta ventana y siga en la nueva.',
    contended: 'Otra ventana estaba guardando a la vez. Esta anotación no se guardó. Guarde otra vez.',
    notEnrolled: 'Este teléfono aún no pertenece a un laboratorio, así que no se puede registrar nada. Delo de alta primero.',
    unfit: 'Esta anotación no cumple su forma y no se guardó. Nada más se ha tocado. Dé al supervisor las palabras de abajo.',
    tooLarge: 'Esta anotación es demasiado larga para enviarla y no se guardó. Acorte el texto y guarde otra vez.',
    fault: 'Falló al guardar. Esta anotación no se guardó; todo lo anterior, sí. Guarde otra vez; si vuelve a fallar, escríbala en papel y avise al supervisor.',
  },
}
