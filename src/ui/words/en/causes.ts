import type { Cause, Causes } from '../../../corrections/causes/strip-causes.ts'

type Facts = Cause['reasons'][number]['facts']
/** Facts as the screen prints them: names of checks and materials, times and speeds as text. */
export interface ReasonFacts {
  check: string
  keyed: string
  aim: string
  unit: string
  when: string
  from: string
  to: string
  material: string
  signs: Facts
  seen: string
}

const signText = (signs: Facts): string =>
  [['fog', 'fog'], ['speed', 'speed'], ['gamma', 'contrast']]
    .flatMap(([key, name]) => (signs[key!] === undefined ? [] : [`${name} ${signs[key!] === 'same' ? 'as it should be' : signs[key!] as string}`]))
    .join(', ')

export const causes = {
  title: 'What it points to',
  lead: 'Suspects in order, never a verdict: two faults at once can hide each other.',
  none: 'Nothing leans far enough to point anywhere.',
  course: {
    jump: 'It came at once: a change of chemicals, temperature, speed, batch, or the densitometer’s zero.',
    drift: 'It has been going one way for five strips.',
    unknown: '',
  } satisfies Record<Causes['course'], string>,
  settle: (check: string): string => `Settle it: ${check}`,
  seenTitle: 'Seen on the film besides',
  seen: { streaks: 'Streaks along the film', yellowStain: 'A clean yellow stain', brownStain: 'A dirty brown stain' },
  codes: {
    densitometer: 'The densitometer',
    repeatStrip: 'A single strip',
    tooWarm: 'Developer too warm',
    tooCold: 'Developer too cold',
    tooSlow: 'Machine too slow: developed too long',
    tooFast: 'Machine too fast: developed too short',
    overReplenished: 'Too much replenisher',
    underReplenished: 'Too little replenisher, or overdue',
    tooStrong: 'Developer too strong, or contaminated',
    diluted: 'Developer diluted',
    underAgitated: 'Too little agitation',
    oxidised: 'Developer oxidised',
    bromideHigh: 'Bromide has built up',
    bromideLow: 'Bromide short: fresh mix without restrainer',
    phHigh: 'pH high',
    phLow: 'pH low: acid carried in, or alkali short',
    lightOrOldStock: 'Light, or old strip stock',
    sulfideFog: 'Sulfide after a standstill',
    circulation: 'Poor circulation',
    oxidisedStain: 'Oxidised developer',
    weakFixing: 'Silver left by weak fixing',
    newBatch: 'Another batch of strips',
    chemicalChange: 'Something was added',
    speedChanged: 'The speed was changed',
  } as Record<string, string>,
  advice: {
    lightOrOldStock: 'Process a strip of fresh stock, and one that saw no light; check lamps, doors and the date of the strips.',
    sulfideFog: 'Run waste film through, then another strip.',
    weakFixing: 'Test a strip of this film for residual silver; read clearing time and thiosulfate.',
  } as Record<string, string>,
  reasons: {
    readingOut: ({ check, keyed, aim, unit, when }) => `${check} was ${keyed} ${unit} at ${when}, aim ${aim}.`,
    readingLeans: ({ check, keyed, aim, unit, when }) => `${check} leans that way: ${keyed} ${unit} at ${when}, aim ${aim}.`,
    readingOnAim: ({ check, keyed, unit, when }) => `Speaks against it: ${check} was ${keyed} ${unit} at ${when}.`,
    readingOpposite: ({ check, keyed, unit, when }) => `Speaks against it: ${check} was ${keyed} ${unit} at ${when}, on the other side.`,
    readLongAgo: ({ check, when }) => `${check} was last read at ${when}: read it now.`,
    neverRead: ({ check }) => `${check} has not been read.`,
    pattern: ({ signs }) => `The strip shows ${signText(signs)}.`,
    cameSlowly: () => 'It came slowly, as this does.',
    cameAtOnce: () => 'It came at once, as this does.',
    seenOnFilm: ({ seen }) => `Seen: ${seen}.`,
    proofOld: ({ when }) => `It was last proved at ${when}.`,
    proofNever: () => 'It has not been proved.',
    oneStrip: () => 'One strip stops nothing. Run another at once.',
    oneStripJumped: () => 'The strip before was near its aims. Run another at once.',
    batchChanged: ({ from, to }) => `The last good strip was of batch ${from}, this one is of ${to}.`,
    doseSince: ({ material, when }) => `${material} went into the developer at ${when}, after the last good strip.`,
    speedSince: ({ from, to }) => `From ${from} to ${to} since the last good strip.`,
  } as Record<string, (facts: ReasonFacts) => string>,
  bring: {
    title: 'Gamma back to its aim',
    lead: (gamma: string, aim: string): string => `${gamma} found, aim ${aim}. Only when temperature and chemistry stand in their limits, and one cause at a time.`,
    bySpeed: 'By speed',
    speed: (from: string, to: string): string => `${from} → ${to}`,
    moves: 'It moves every other time with it',
    time: (from: string, to: string): string => `${from} → ${to} min`,
    byTemperature: 'Or by temperature',
    celsius: (by: string): string => `${by} °C in the developer`,
    heatMoves: 'Heat also moves fog, the balance of the two agents, swelling of the gelatine and evaporation. Beyond half a degree look for the fault instead.',
    far: 'A change of more than a tenth hides a fault instead of mending it.',
    supervisor: 'The supervisor decides; whoever loads the machine is told.',
    unknown: {
      noGamma: 'This strip gave no gamma.',
      noDeveloper: 'The plan has no developer on this machine’s path.',
      lawUnknown: 'The plan does not know how this film’s gamma grows with time. Develop two strips for two times and fit the law at the bench.',
      offTheCurve: 'This gamma lies beyond what any time would give: look for the fault.',
    },
  },
}
