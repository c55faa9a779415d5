import type { Translation } from '../translation.ts'
import type { sending as english } from '../en/sending.ts'

const keepsApart = { title: 'El servidor ya no cuenta este teléfono', more: 'Lo anotado aquí se conserva y no cuenta hasta que un supervisor lo mire. Inscriba este teléfono de nuevo.' }

export const sending: Translation<typeof english> = {
  why: {
    notEnrolled: { title: 'Este teléfono no pertenece a ningún laboratorio', more: 'Lo anotado se queda aquí hasta entonces. Pida un código a un supervisor.' },
    notConfirmed: { title: 'Ningún supervisor ha confirmado aún este teléfono', more: 'Todo se conserva aquí y sube cuando se confirmen sus cifras, en Menú, Dispositivos, en la pantalla del supervisor.' },
    unreachable: { title: 'No se llega al servidor', more: 'Todo se conserva en este teléfono y sube solo cuando vuelva la red.' },
    timeout: { title: 'El servidor tarda demasiado en responder', more: 'Todo se conserva en este teléfono, que lo intenta otra vez solo.' },
    strange: { title: 'Responde algo que no es el servidor del laboratorio', more: 'Todo se conserva aquí. Mire si el teléfono está en la red del laboratorio: puede haber en medio la página de acceso de otra.' },
    busy: { title: 'El servidor está ocupado', more: 'Todo se conserva en este teléfono, que lo intenta otra vez solo.' },
    quota: { title: 'El servidor no admite hoy más de este teléfono', more: 'El resto se conserva aquí y sube mañana. Avise al supervisor: tantas anotaciones en un día no son corrientes.' },
    unknownVersion: { title: 'La aplicación y el servidor son de versiones distintas', more: 'Todo se conserva aquí. Cierre la aplicación y ábrala otra vez donde haya red; si sigue igual, hay que poner al día el servidor.' },
    unauthorised: { title: 'El servidor no conoce este teléfono', more: 'Todo se conserva aquí. Avise al supervisor. Si el servidor se instaló de nuevo, guarde en un archivo lo que espera y luego inscriba este teléfono de nuevo.' },
    revoked: keepsApart,
    retired: keepsApart,
    quarantined: keepsApart,
    fork: { title: 'El servidor tiene otra historia de este teléfono', more: 'El teléfono se copió o se restauró de una copia. Guarde en un archivo lo que espera y luego inscriba este teléfono de nuevo.' },
    entryRefused: { title: 'El servidor rechaza una anotación de este teléfono', more: 'Esa y las que siguen se conservan aquí. Guárdelas en un archivo y avise al supervisor.' },
    recordBroken: { title: 'El registro del servidor no concuerda con lo que él mismo firmó', more: 'Lo de este teléfono se conserva y sigue siendo válido. No dé por cierto nada nuevo del servidor y avise enseguida al supervisor.' },
    refused: { title: 'El servidor rechaza lo que pide este teléfono', more: 'Todo se conserva aquí. Avise al supervisor si sigue igual.' },
    store: { title: 'Este teléfono no puede leer su propio almacén', more: 'Lo guardado está a salvo en lo que se pueda leer. Cierre la aplicación y ábrala otra vez; si sigue igual, guarde en un archivo lo que se pueda leer.' },
  },
  files: 'Archivos de anotaciones sin enviar',
  anew: 'Inscribir este teléfono de nuevo',
}
