import type { Translation } from '../translation.ts'
import type { causes as english, ReasonFacts } from '../en/causes.ts'

const ways: Record<string, string> = { same: 'como debe', up: 'más alto', down: 'más bajo' }

const signText = (signs: ReasonFacts['signs']): string =>
  [['fog', 'velo'], ['speed', 'sensibilidad'], ['gamma', 'contraste']]
    .flatMap(([key, name]) => (signs[key!] === undefined ? [] : [`${name} ${ways[signs[key!] as string] ?? (signs[key!] as string)}`]))
    .join(', ')

export const causes: Translation<typeof english> = {
  title: 'A qué apunta',
  lead: 'Sospechosos por orden, nunca un veredicto: dos fallos a la vez pueden taparse.',
  none: 'Nada se inclina lo bastante para apuntar a algún sitio.',
  course: {
    jump: 'Vino de golpe: un cambio de química, temperatura, velocidad, lote, o del cero del densitómetro.',
    drift: 'Lleva cinco tiras yendo en un mismo sentido.',
    unknown: '',
  },
  settle: (check) => `Para salir de dudas: ${check}`,
  seenTitle: 'Visto además en la película',
  seen: { streaks: 'Rayas a lo largo de la película', yellowStain: 'Mancha amarilla limpia', brownStain: 'Mancha parda sucia' },
  codes: {
    densitometer: 'El densitómetro',
    repeatStrip: 'Una sola tira',
    tooWarm: 'Revelador demasiado caliente',
    tooCold: 'Revelador demasiado frío',
    tooSlow: 'Máquina demasiado lenta: revelado de más',
    tooFast: 'Máquina demasiado rápida: revelado de menos',
    overReplenished: 'Demasiado regenerador',
    underReplenished: 'Poco regenerador, o atrasado',
    tooStrong: 'Revelador demasiado fuerte, o contaminado',
    diluted: 'Revelador diluido',
    underAgitated: 'Poca agitación',
    oxidised: 'Revelador oxidado',
    bromideHigh: 'Se ha acumulado bromuro',
    bromideLow: 'Falta bromuro: mezcla nueva sin restrictor',
    phHigh: 'pH alto',
    phLow: 'pH bajo: ácido arrastrado, o falta álcali',
    lightOrOldStock: 'Luz, o tiras caducadas',
    sulfideFog: 'Sulfuro tras una parada',
    circulation: 'Mala circulación',
    oxidisedStain: 'Revelador oxidado',
    weakFixing: 'Plata que dejó un fijado débil',
    newBatch: 'Otro lote de tiras',
    chemicalChange: 'Se añadió algo',
    speedChanged: 'Se cambió la velocidad',
  },
  advice: {
    lightOrOldStock: 'Procese una tira de película nueva y otra que no haya visto luz; revise lámparas, puertas y la fecha de las tiras.',
    sulfideFog: 'Pase película de desecho y después otra tira.',
    weakFixing: 'Busque plata residual en una tira de esta película; lea el tiempo de aclarado y el tiosulfato.',
  },
  reasons: {
    readingOut: ({ check, keyed, aim, unit, when }) => `${check} estaba en ${keyed} ${unit} a las ${when}, objetivo ${aim}.`,
    readingLeans: ({ check, keyed, aim, unit, when }) => `${check} se inclina hacia ahí: ${keyed} ${unit} a las ${when}, objetivo ${aim}.`,
    readingOnAim: ({ check, keyed, unit, when }) => `En contra: ${check} estaba en ${keyed} ${unit} a las ${when}.`,
    readingOpposite: ({ check, keyed, unit, when }) => `En contra: ${check} estaba en ${keyed} ${unit} a las ${when}, del otro lado.`,
    readLongAgo: ({ check, when }) => `${check} se leyó por última vez a las ${when}: léalo ahora.`,
    neverRead: ({ check }) => `${check} no se ha leído.`,
    pattern: ({ signs }) => `La tira muestra ${signText(signs)}.`,
    cameSlowly: () => 'Vino despacio, como suele esto.',
    cameAtOnce: () => 'Vino de golpe, como suele esto.',
    seenOnFilm: ({ seen }) => `Visto: ${seen}.`,
    proofOld: ({ when }) => `Se comprobó por última vez a las ${when}.`,
    proofNever: () => 'No se ha comprobado.',
    oneStrip: () => 'Una sola tira no para nada. Pase otra enseguida.',
    oneStripJumped: () => 'La tira anterior estaba cerca de sus objetivos. Pase otra enseguida.',
    batchChanged: ({ from, to }) => `La última tira buena era del lote ${from}; esta es del ${to}.`,
    doseSince: ({ material, when }) => `Al revelador se le echó ${material} a las ${when}, después de la última tira buena.`,
    speedSince: ({ from, to }) => `De ${from} a ${to} desde la última tira buena.`,
  },
  bring: {
    title: 'Volver la gamma a su objetivo',
    lead: (gamma, aim) => `Hallada ${gamma}, objetivo ${aim}. Solo cuando temperatura y química estén en sus límites, y una causa cada vez.`,
    bySpeed: 'Con la velocidad',
    speed: (from, to) => `${from} → ${to}`,
    moves: 'Con ella cambian todos los demás tiempos',
    time: (from, to) => `${from} → ${to} min`,
    byTemperature: 'O con la temperatura',
    celsius: (by) => `${by} °C en el revelador`,
    heatMoves: 'El calor mueve también el velo, el equilibrio de los dos agentes, el hinchado de la gelatina y la evaporación. Más allá de medio grado, busque el fallo.',
    far: 'Un cambio de más de una décima tapa un fallo en vez de corregirlo.',
    supervisor: 'Decide el supervisor; se avisa a quien carga la máquina.',
    unknown: {
      noGamma: 'Esta tira no dio gamma.',
      noDeveloper: 'El plan no tiene revelador en el recorrido de esta máquina.',
      lawUnknown: 'El plan no sabe cómo crece la gamma de esta película con el tiempo. Revele dos tiras dos tiempos y ajuste la ley en el banco.',
      offTheCurve: 'Esta gamma queda más allá de lo que daría cualquier tiempo: busque el fallo.',
    },
  },
}
