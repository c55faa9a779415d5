import { planChoices as englishChoices, planFields as englishFields } from '../en/plan-fields.ts'
import type { plan as english } from '../en/plan.ts'
import type { Translation } from '../translation.ts'
import { planChoices, planFields } from './plan-fields.ts'

const shapes: Readonly<Record<string, (bound: string) => string>> = {
  missing: () => 'Hace falta.',
  notANumber: () => 'Esto no es un número. Cifras y un solo punto o coma decimal.',
  notText: () => 'Tienen que ser palabras.',
  notAChoice: () => 'Elija uno de la lista.',
  notAnId: () => 'Un id solo tiene minúsculas, cifras y guiones.',
  form: () => 'No está escrito como debe.',
  atLeast: (bound) => `Tiene que ser ${bound} o más.`,
  above: (bound) => `Tiene que ser más de ${bound}.`,
  atMost: (bound) => `Tiene que ser ${bound} o menos.`,
  below: (bound) => `Tiene que ser menos de ${bound}.`,
  tooShort: (bound) => `Al menos ${bound} letras.`,
  tooLong: (bound) => `Como mucho ${bound} letras.`,
  tooFew: (bound) => (bound === '1' ? 'Hace falta al menos uno.' : `Hacen falta al menos ${bound}.`),
  tooMany: (bound) => `Como mucho ${bound}.`,
  wrongKind: () => 'Tiene otra forma que la debida.',
}

const nothingChanged = 'No se cambió nada.'

export const plan: Translation<typeof english> = {
  title: 'Plan del laboratorio',
  laboratory: 'Laboratorio',
  lists: {
    machines: { title: 'Máquinas', one: 'Máquina', add: 'Añadir una máquina', none: 'Aún no hay máquinas' },
    stations: { title: 'Puestos', one: 'Puesto', add: 'Añadir un puesto', none: 'Aún no hay puestos' },
    checks: { title: 'Controles', one: 'Control', add: 'Añadir un control', none: 'Aquí aún no hay controles' },
    people: { title: 'Personas', one: 'Persona', add: 'Añadir una persona', none: 'Aún no hay nadie' },
    shifts: { title: 'Turnos', one: 'Turno', add: 'Añadir un turno', none: 'Aún no hay turnos' },
    materials: { title: 'Materiales', one: 'Material', add: 'Añadir un material', none: 'Aún no hay materiales' },
    methods: { title: 'Métodos', one: 'Método', add: 'Añadir un método', none: 'Aún no hay métodos' },
    formulas: { title: 'Fórmulas', one: 'Fórmula', add: 'Añadir una fórmula', none: 'Aún no hay fórmulas' },
    cautions: { title: 'Precauciones propias', one: 'Precaución', add: 'Añadir una precaución', none: 'Aún no hay precauciones propias' },
  },
  nameOf: (field) => planFields[field]?.[0] ?? englishFields[field][0],
  helpOf: (field) => planFields[field]?.[1] ?? englishFields[field][1],
  choice: (field, value) => planChoices[field]?.[value] ?? englishChoices[field]?.[value] ?? value,
  checkKinds: { reading: 'una lectura', look: 'una inspección', strip: 'una tira de control' },
  checkKindsMore: { reading: 'Un número con objetivo y límites', look: 'Está bien o no está bien', strip: 'Densidades de una tira procesada' },
  fresh: { machines: 'Máquina nueva', stations: 'Puesto nuevo', checks: 'Control nuevo', people: 'Persona nueva', shifts: 'Turno nuevo', materials: 'Material nuevo', methods: 'Método nuevo', formulas: 'Fórmula nueva', cautions: 'Precaución nueva' },
  inForceSince: (when) => `en vigor desde ${when}`,
  startingValues: (count, all) => `${count} de ${all} objetivos son valores de partida`,
  cautionsMore: 'Una ficha propia para lo que la aplicación no tiene, o palabras propias añadidas a una de las suyas. Se lee antes de una cantidad, como cualquier otra.',
  startingValuesMore: 'Valores del oficio para empezar. Cada uno lleva esa etiqueta hasta que lo sustituye el del laboratorio. Nombres e instrucciones: traducción aún no comprobada por una persona competente.',
  startingValue: (source) => `Valor de partida: ${source}`,
  startingShort: 'valor de partida',
  setBy: (who, when) => `Fijado por ${who}, ${when}`,
  willBeSet: 'Lo fijará usted al firmar',
  whoSet: 'Quién fijó el objetivo',
  takeAsOurs: 'Estos valores son los del laboratorio',
  lookOnly: 'Solo un supervisor cambia el plan. Aquí se puede leer.',
  knownAs: (id) => `En el registro como ${id}`,
  counts: { stations: (count) => `${count} ${count === 1 ? 'puesto' : 'puestos'}`, checks: (count) => `${count} ${count === 1 ? 'control' : 'controles'}` },
  copy: 'Copiar esta máquina',
  copyMore: 'Con sus puestos a lo largo de la película, sus controles y límites. Celda de plata, instrumentos y salas sirven a las dos y no se copian.',
  copyName: 'Nombre de la máquina nueva',
  copyOf: (name) => `${name} (copia)`,
  typical: 'Añadir una máquina típica',
  up: (name) => `Subir ${name}`,
  down: (name) => `Bajar ${name}`,
  order: 'Cambiar el orden',
  orderDone: 'El orden está bien',
  remove: (name) => `Quitar ${name} del plan`,
  removeMore: 'Sus lecturas se quedan en el registro. Nada cambia hasta que se firma el plan.',
  removeHold: 'Mantener pulsado para quitarlo',
  stillOpen: {
    title: 'Ahí queda algo abierto',
    refused: 'Ciérrelo, libérelo o párelo antes. Lo que está abierto ahí no tendría luego dónde leerse otra vez.',
    byThen: 'Tiene que estar cerrado, liberado o parado para entonces. Lo que no lo esté sigue en Ahora hasta que alguien lo cierre.',
  },
  addLine: 'Añadir una línea',
  removeLine: (line) => `Quitar la línea ${line}`,
  lineName: (line) => `Línea ${line}`,
  addGroup: (name) => `Añadir: ${name.toLowerCase()}`,
  removeGroup: (name) => `Quitar: ${name.toLowerCase()}`,
  tableName: 'Nombre',
  tableValue: 'Valor',
  choose: 'Elija',
  none: 'ninguno',
  optional: 'puede quedar vacío',
  yes: 'sí',
  no: 'no',
  problem: ({ code, why, detail, bound }) => {
    switch (code) {
      case 'shape':
        return why === 'unknownField' ? `El archivo tiene un campo que esta aplicación no conoce: ${detail}.` : (shapes[why ?? 'wrongKind'] ?? shapes['wrongKind']!)(bound === undefined ? '' : String(bound))
      case 'repeatedId':
        return `El id ${detail} está dos veces.`
      case 'unknownId':
        return `Nombra ${detail}, que el plan no tiene. Elija otro.`
      case 'limitOrder':
        return `Fuera de orden. Va así: retener por debajo, acción baja, aviso bajo, objetivo, aviso alto, acción alta, retener por encima. Aquí: ${detail}.`
      case 'aimOutsideLimits':
        return `El instrumento no puede mostrar el objetivo, ${detail}.`
      case 'rangeOrder':
        return `El intervalo está al revés: ${detail}.`
      case 'timeZone':
        return `No existe la zona horaria ${detail}.`
      case 'noSupervisor':
        return 'Hace falta al menos un supervisor: alguien tiene que firmar.'
      case 'substance':
        return detail.includes(':') ? `No tiene esa forma cristalina. ${detail}.` : `Los cálculos no conocen ${detail || 'esta sustancia'}, así que no se podría calcular ninguna dosis.`
      case 'pair':
        return 'Estos dos no se pueden juzgar juntos: tienen que ser lecturas de una misma unidad, y no la misma.'
      case 'depth':
        return `Con este volumen y esta superficie el líquido tendría ${detail} m de fondo. Uno de los dos no está bien.`
      case 'shiftTimes':
        return `Dos turnos empiezan a las ${detail}.`
      case 'cautionReplaced':
        return `La aplicación tiene una ficha para esta sustancia: ${detail}. Elíjala y añádale sus propias palabras.`
      case 'stockUnit':
        return `Se dosifica por ${detail === 'L' ? 'volumen' : 'peso'}, así que se cuenta en ${detail}.`
    }
  },
  toMend: (count) => (count === 1 ? '1 por arreglar' : `${count} por arreglar`),
  draft: {
    title: (count) => (count === 1 ? '1 cambio aún no está en vigor' : `${count} cambios aún no están en vigor`),
    more: 'Se guardan en este teléfono hasta que los firme o los descarte.',
    look: 'Revisar y firmar',
    drop: 'Descartar todos los cambios',
    dropHold: 'Mantener pulsado para descartarlos',
    none: 'No se ha cambiado nada.',
  },
  review: {
    title: 'Revisar y firmar',
    changes: 'Qué cambia',
    problems: 'Por arreglar antes de poder firmar',
    from: (value) => `era ${value}`,
    added: 'nuevo',
    removed: 'quitado',
    order: 'en otro orden',
    nothing: 'vacío',
    effective: 'En vigor desde',
    now: 'ahora',
    nextShift: (name, when) => `el próximo turno: ${name}, ${when}`,
    hours: 'Cambian las horas de los turnos. Desde el próximo turno, el que corre conserva las suyas.',
    later: 'otro momento',
    laterField: 'Fecha y hora, según el reloj del laboratorio',
    laterProblem: 'Tiene que estar por venir, y no antes de la revisión siguiente.',
    why: 'Por qué',
    whyHint: 'Queda para siempre junto a la revisión.',
    old: 'Las lecturas viejas conservan los límites con que se juzgaron.',
    sign: (count) => (count === 1 ? 'Firmar este cambio' : `Firmar estos ${count} cambios`),
    signs: (who) => `Firmado como revisión del plan por ${who}, con la clave de este teléfono. Se guarda aquí enseguida y se envía solo; el servidor comprueba que lo hizo un supervisor.`,
    stale: (who, when) => `Mientras tanto cambió el plan ${who}, ${when}`,
    staleMore: 'Tome esa revisión: sus cambios se ponen encima.',
    takeIn: 'Tomarla',
    both: (places) => `Cambiado por los dos, vale lo suyo: ${places}`,
    mend: 'Arregle antes lo marcado.',
  },
  done: { now: 'El plan nuevo está en vigor.', later: (when) => `El plan nuevo está firmado. Entra en vigor ${when}.` },
  revisions: 'Revisiones',
  revisionsMore: 'Se conserva cada una, con lo que cambió.',
  coming: (when) => `entra en vigor ${when}`,
  since: (when) => `desde ${when}`,
  by: (who) => `por ${who}`,
  firstRevision: 'El primer plan de este laboratorio.',
  sent: 'La tiene el servidor',
  notSent: 'Espera en este teléfono a enviarse',
  sealed: (hash) => `Anotación firmada ${hash}`,
  saveRevision: 'Guardar esta revisión como archivo',
  backTo: 'Recuperar este plan',
  backToMore: 'Sus valores pasan a sus cambios. Usted los revisa y firma.',
  files: 'Archivos',
  exportFile: 'Guardar el plan como archivo',
  importFile: 'Tomar un plan de un archivo',
  importMore: 'Se comprueba, se muestra con todas sus diferencias y se firma como cualquier cambio.',
  schema: 'JSON Schema del archivo',
  schemaMore: 'Para otros programas. Viene del servidor.',
  notJson: `Este archivo no es JSON. ${nothingChanged}`,
  notAPlan: `Este archivo no es un plan válido. ${nothingChanged}`,
  same: 'El archivo dice lo que ya dice el plan.',
  moreProblems: (count) => `y ${count} más`,
  otherParts: 'Lo que usa el laboratorio',
  labels: 'Etiquetas de tanque',
  first: {
    own: 'Un laboratorio propio',
    ownMore: 'Guiado: nombre, unidades, una máquina con controles típicos, personas, etiquetas, primera ronda. Unos minutos.',
    titles: { place: 'Su laboratorio', units: 'Unidades', machine: 'Su primera máquina', people: 'Quién trabaja aquí' },
    stepsName: 'Pasos',
    step: (number) => `Paso ${number} de 6`,
    next: 'Siguiente',
    make: 'Crear el laboratorio',
    needed: 'Hace falta.',
    positive: 'Hace falta un número mayor que cero.',
    lacking: (bad) => (bad.has('name') ? 'Le falta un nombre.' : bad.has('stations') ? 'Elija al menos un puesto.' : 'Hace falta un número mayor que cero.'),
    pinShort: 'Un PIN de al menos 4 cifras.',
    unitsMore: 'Como las muestran los medidores y envases de la casa.',
    feet: 'Película en pies',
    metres: 'Película en metros',
    machineName: 'Máquina 1',
    starting: 'Sus objetivos empiezan como valores de partida',
    stationsMore: 'Se desmarca lo que no tiene. Volumen y recorrido son típicos: teclee los suyos donde los sepa; todo se puede cambiar después.',
    operators: 'Operadores',
    operatorsMore: (name) => `${name} es el supervisor. Cada operador elige un PIN la primera vez que toma un teléfono.`,
    operator: (number) => `Operador ${number}`,
    pin: (name) => `PIN de ${name} en este teléfono`,
    notSaid: 'aún sin rellenar',
    ready: 'Su laboratorio está en pie',
    replace: 'Sustitúyalos por los suyos en el plan: cada uno dice quién lo fijó y cuándo.',
    labelsMore: 'Una etiqueta en cada tanque abre su control y prueba que alguien estuvo allí.',
    printLabels: 'Ver e imprimir las etiquetas',
    phonesMore: 'Cada teléfono entra una vez, con un código.',
    planMore: 'Límites, intervalos, materiales, métodos, turnos: todo lo puede cambiar.',
    emergency: 'Rellenar los números de emergencia',
    startRound: (machine) => `${machine} en marcha: empezar la primera ronda`,
    roundMore: 'La ronda pide lo que toca mientras la máquina está en marcha.',
  },
  propose: {
    title: 'Límites de las últimas lecturas',
    more: 'Lo que hace el proceso, no lo que admite la película: compare con la dispersión permitida antes de tomarlos.',
    last: 'Lecturas',
    all: (count) => `las ${count}`,
    about: 'Centro',
    aboutMean: 'su media',
    aboutAim: 'el objetivo como está',
    tooFew: (count, fewest) => `${count} lecturas son demasiado pocas. Al menos ${fewest}.`,
    equal: 'Todas estas lecturas son iguales: no se puede decir nada.',
    few: (enough) => `Menos de ${enough}: mírelos otra vez cuando haya más.`,
    beyond: (count) => (count === 1 ? '1 de ellas queda fuera: busque antes su causa.' : `${count} de ellas quedan fuera: busque antes su causa.`),
    working: (count, mean, sigma) => `${count} lecturas, media ${mean}, s ${sigma} (rango móvil medio ÷ 1.128). Aviso a 2 s, acción a 3 s.`,
    take: 'Pasarlos al plan',
    taken: (check, count) => `${check}: límites de las últimas ${count} lecturas`,
    loading: 'Leyendo el registro',
    source: 'Shewhart 1931; ISO 7870-2',
    now: 'ahora',
    proposed: 'propuesto',
  },
  passphrase: {
    title: 'Frase de contraseña',
    more: 'Con ella firma los turnos un supervisor. Solo la guarda el servidor, así que hace falta la red.',
    field: 'Frase nueva',
    set: 'Fijar la frase',
    done: 'La frase está fijada.',
    signIn: 'Identifíquese antes',
    notYet: 'Firme antes el plan con esta persona en él.',
  },
}
