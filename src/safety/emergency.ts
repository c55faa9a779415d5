/**
 * What is one tap away on every screen, without a network and without a gate: what to do in the first minute. It stands by itself, so that it
 * is there before anything else has loaded. Whom to call, the eyewash and the assembly point come from the lab plan.
 */
export interface EmergencyCard {
  id: 'eyes' | 'skin' | 'swallowed' | 'breathed' | 'spill' | 'gasSmell' | 'fire' | 'electric' | 'caught'
  title: string
  /** In order; the first is done before anything is read. */
  steps: readonly { key: string; says: string }[]
  source: string
}

const step = (key: string, says: string) => ({ key, says })

export const emergencyCards: readonly EmergencyCard[] = [
  {
    id: 'eyes',
    title: 'In the eyes',
    steps: [
      step('rinse', 'To the eyewash now. Rinse with plenty of water, lids held open.'),
      step('time', 'At least 15 minutes. After alkali at least 30, and go on rinsing on the way to help.'),
      step('lenses', 'Contact lenses out if that is easy.'),
      step('help', 'Somebody else calls for medical help, and takes the label or the safety data sheet along.'),
    ],
    source: 'McCann; international chemical safety cards; 30 minutes for alkali from memory',
  },
  {
    id: 'skin',
    title: 'On the skin',
    steps: [
      step('clothes', 'Take off wet clothing, under the shower.'),
      step('rinse', 'Rinse with plenty of water, at least 15 minutes for acid or alkali.'),
      step('help', 'Burn, blister or large area: get medical help.'),
    ],
    source: 'international chemical safety cards; minutes from memory',
  },
  {
    id: 'swallowed',
    title: 'Swallowed',
    steps: [
      step('rinse', 'Rinse the mouth. Do not cause vomiting.'),
      step('call', 'Call a poison centre or a doctor at once; have the label at hand.'),
      step('ether', 'Solvent swallowed: nothing to drink.'),
    ],
    source: 'international chemical safety cards',
  },
  {
    id: 'breathed',
    title: 'Gas breathed in',
    steps: [
      step('out', 'Out to fresh air. Do not go in for somebody without a breathing set and a second person.'),
      step('rest', 'Rest, half upright, loosen clothing.'),
      step('help', 'Cough, short breath, a heavy breath of gas, red or brown fume: medical help even if the person feels well. Lung harm can come hours later.'),
    ],
    source: 'international chemical safety cards; delayed harm from memory',
  },
  {
    id: 'spill',
    title: 'Spill',
    steps: [
      step('people', 'Keep people away. Small and known: gloves, goggles, absorbent. Large or unknown: out, and call.'),
      step('air', 'Exhaust on. Solvent: no switch, no phone, no flame; leave and close the door.'),
      step('apart', 'Never acid and hypochlorite in one drum or one mop bucket. No sawdust on acid or oxidiser.'),
      step('drain', 'Keep it from the drain unless local rules allow.'),
    ],
    source: 'ICSC 0363 and the safety cards of this product; common practice',
  },
  {
    id: 'gasSmell',
    title: 'Smell of gas',
    steps: [
      step('stop', 'Stop the dose, stop the cell current. Exhaust on. Leave.'),
      step('sulfurDioxide', 'Sharp, choking: sulfur dioxide. Acid met sulfite.'),
      step('hydrogenSulfide', 'Rotten eggs: hydrogen sulfide. The smell fades when it becomes deadly. Out at once, do not sniff again.'),
      step('chlorine', 'Swimming bath, burning eyes: chlorine. Hypochlorite met acid.'),
      step('back', 'Nobody goes back alone, nor before the air is proven clear.'),
    ],
    source: 'NIOSH pages on sulfur dioxide; the rest from memory',
  },
  {
    id: 'fire',
    title: 'Fire',
    steps: [
      step('alarm', 'Raise the alarm, call the fire service, get people out, close doors.'),
      step('nitrate', 'Nitrate film: do not fight a reel. It burns without air, its smoke is poisonous. Out, door shut.'),
      step('solvent', 'Solvent: only if small, trained and with the way out behind you.'),
      step('assembly', 'To the assembly point; count heads.'),
    ],
    source: 'guide to storing nitrate film (2003); NFPA 40 excerpt (2001); common practice',
  },
  {
    id: 'electric',
    title: 'Electric shock',
    steps: [
      step('off', 'Cut the supply first. Do not touch the person before.'),
      step('call', 'Call for help. Resuscitate if trained.'),
    ],
    source: 'US Army SS0520; common practice',
  },
  {
    id: 'caught',
    title: 'Caught in the machine',
    steps: [
      step('stop', 'Stop the machine. Do not pull free.'),
      step('call', 'Call the emergency services; keep the person still and warm.'),
    ],
    source: 'Film Archives On-Line sect. 9; US Army SS0520',
  },
]

/** Said on every emergency card and every caution. */
export const deferral =
  'This does not replace the product’s safety data sheet, the label, local codes, or a licensed or trained person. Where they say otherwise, they decide.'
