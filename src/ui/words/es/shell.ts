import type { Translation } from '../translation.ts'
import type { shell as english } from '../en/shell.ts'

export const shell: Translation<typeof english> = {
  places: { now: 'Ahora', round: 'Ronda', bench: 'Banco', trends: 'Gráficos', shift: 'Turno', board: 'Panel' },
  placesName: 'Lugares',
  emergency: 'Emergencia',
  menu: 'Menú',
  back: 'Atrás',
  close: 'Cerrar',
  skipToContent: 'Ir al contenido',
  demo: 'Laboratorio de prueba',
  demoShort: 'Prueba',
  demoMore: 'Máquinas, personas y lecturas inventadas. Nada de esto es real.',
  loading: 'Un momento',
  waiting: ({ waiting, toCome }) => [waiting ? `${waiting} por enviar` : '', toCome ? `${toCome} por llegar` : ''].filter(Boolean).join(', ') || 'Todo enviado',
  waitingSince: (age, span) => (age < 60_000 ? 'desde ahora mismo' : `desde hace ${span(age)}`),
  update: { title: 'Hay una versión nueva de la aplicación', more: 'Es un momento. Nada de lo registrado se toca.', now: 'Usarla ya' },
  noStore: {
    title: 'Aquí no se puede registrar nada',
    more: 'Una lectura que no se guarda es peor que ninguna, así que no se puede empezar una ronda. Las fichas de emergencia funcionan igual.',
  },
  trouble: {
    unavailable: 'Este navegador no guarda nada. No se puede registrar nada.',
    databaseLost: 'El teléfono soltó su almacén. Lo guardado está a salvo. Cierre la aplicación y ábrala de nuevo antes de seguir.',
    full: 'Este teléfono está lleno. Lo guardado está a salvo; nada nuevo se puede guardar hasta que haya sitio.',
    corrupt: 'Una parte del almacén no se puede leer. Lo que se puede leer está a salvo: entréguelo desde el menú y avise al supervisor.',
    unreadable: 'Una anotación de este teléfono no se puede leer y queda fuera. Entregue lo que hay desde el menú y avise al supervisor.',
    newerVersion: 'Hay abierta una versión más nueva de la aplicación. Cierre esta ventana y siga en la nueva.',
    contended: 'Otra ventana está guardando todo el tiempo. Cierre las demás ventanas de la aplicación.',
    blocked: 'Otra ventana de la aplicación mantiene abierta una versión anterior. Ciérrela.',
  },
  unsent: {
    warning: (count, span) => `${count} ${count === 1 ? 'anotación espera' : 'anotaciones esperan'} en este teléfono, la más antigua desde hace ${span}`,
    warningMore: 'Aquí están a salvo. Lleve el teléfono adonde haya red; se envían solas.',
    alarm: (count, span) => `${count} ${count === 1 ? 'anotación no ha llegado' : 'anotaciones no han llegado'} al servidor desde hace ${span}`,
    alarmMore: 'Están a salvo en este teléfono y en ningún otro sitio. Busque la red ya, o entréguelas como archivo desde el menú.',
    send: 'Enviar ahora',
  },
  nobody: 'Nadie',
  notFound: { title: 'Aquí no hay nada', more: 'Esta dirección no es de ninguna pantalla.', go: 'Ir a Ahora' },
  notHere: {
    title: 'Esta parte aún no está en el teléfono',
    more: 'Llega sola cuando el teléfono alcanza el servidor. Lo guardado está a salvo en este teléfono.',
    again: 'Probar otra vez',
  },
  fault: {
    title: 'Algo falló en la aplicación',
    more: 'Lo guardado está a salvo en este teléfono. Abra de nuevo la aplicación; si vuelve a pasar, dé al supervisor las palabras de abajo.',
    again: 'Abrir de nuevo',
  },
}
