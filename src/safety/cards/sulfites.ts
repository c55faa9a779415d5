import type { CautionCard } from '../card.ts'
import { chemicalGloves, dust, exhaust, fourAids, line, never, powder } from '../phrases.ts'

export const sodiumSulfite: CautionCard = {
  id: 'sodium-sulfite',
  version: 1,
  kind: 'chemical',
  name: 'Sodium sulfite',
  cas: '7757-83-7',
  use: 'preservative of developer and fixing bath',
  substances: ['sodiumSulfite'],
  ghs: { pictograms: [], signal: 'none', h: [], p: ['P261', 'P264', 'P280'], regional: [] },
  wear: [powder],
  ventilation: [dust],
  never: [
    never('acid', 'Any acid', 'sulfurDioxide', 'With any acid it frees sulfur dioxide, a poisonous gas.'),
    never('acidBath', 'An acid bath, added fast or as a solid', 'sulfurDioxide', 'Into an acid fixing bath only as a solution, slowly, exhaust on: some sulfur dioxide comes off.', 'from memory'),
    never('oxidisers', 'Strong oxidisers', 'heat', 'With strong oxidisers: heat.'),
  ],
  firstAid: fourAids,
  spill: [line('sweep', 'Sweep up dry; keep from acids; ventilate.')],
  storage: [line('dry', 'Closed and dry: air turns it to sulfate, and then it no longer guards the bath.', 'Studio Light 1922')],
  exposureLimits: [{ value: 'see sulfur dioxide for the gas formed', source: 'NIOSH IDLH page' }],
  deadliest: ['acid', 'acidBath'],
  gated: true,
  source: 'Sulfur dioxide on acid: supplier sheets for a developer replenisher and for potassium sulfite. Some European labels carry EUH031, from memory.',
}

export const sulfiteIntoAcidBath: CautionCard = {
  id: 'op-sulfite-acid-bath',
  version: 1,
  kind: 'operation',
  name: 'Sulfite solution into an acid fixing bath',
  use: 'sulfite or pH of a fixing bath found low',
  substances: [],
  ghs: { pictograms: [], signal: 'none', h: [], p: ['P260', 'P280'], regional: [] },
  wear: [chemicalGloves],
  ventilation: [exhaust],
  never: [
    never('solid', 'Solid, or poured fast', 'sulfurDioxide', 'As a solution, slowly, at the return, exhaust on: an acid bath answers sulfite with some sulfur dioxide. Never the solid, never a hydroxide.', 'from memory'),
  ],
  firstAid: fourAids.slice(0, 3),
  spill: [line('stop', 'Stop, ventilate; keep the solution from acids.')],
  storage: [],
  exposureLimits: [],
  deadliest: ['solid'],
  gated: true,
  source: 'After the fixing-bath notes of Studio Light (1916 to 1922); sulfur dioxide on dosing from memory.',
}

export const metabisulfite: CautionCard = {
  id: 'sodium-metabisulfite',
  version: 1,
  kind: 'chemical',
  name: 'Sodium or potassium metabisulfite, bisulfite',
  cas: '7681-57-4',
  use: 'acidifier in mixing; stop',
  substances: ['sodiumMetabisulfite', 'potassiumMetabisulfite', 'sodiumBisulfite'],
  ghs: {
    pictograms: ['GHS05', 'GHS07'], signal: 'Danger', h: ['H302', 'H318'],
    p: ['P264', 'P270', 'P280', 'P301+P312', 'P305+P351+P338', 'P310', 'P501'], regional: ['EUH031'],
  },
  wear: [powder],
  ventilation: [dust, exhaust],
  never: [
    never('acid', 'Acid', 'sulfurDioxide', 'With acid it frees sulfur dioxide, a poisonous gas.'),
    never('oxidisers', 'Oxidisers', 'heat', 'With oxidisers: heat; with acids and oxidisers in solution a danger of fire is noted.'),
  ],
  firstAid: fourAids,
  spill: [line('absorb', 'Inert absorbent into a container that is not metal; ventilate.')],
  storage: [line('dry', 'Dry, away from acids.')],
  exposureLimits: [{ value: '5 mg/m³', source: 'from memory' }],
  deadliest: ['acid'],
  gated: true,
  source: 'A supplier sheet (harmful if swallowed, serious eye damage, acid frees toxic gas); ICSC 1134 for the solution. H302 and H318 from memory. EUH031 is a European supplement, not UN GHS.',
}
