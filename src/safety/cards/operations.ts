import type { CautionCard } from '../card.ts'
import { breathed, chemicalGloves, eyes, line, never, skin } from '../phrases.ts'

const operation = { version: 1, kind: 'operation', substances: [], exposureLimits: [], gated: true } as const
const label = (p: readonly string[]): CautionCard['ghs'] => ({ pictograms: [], signal: 'none', h: [], p, regional: [] })

export const silverCell: CautionCard = {
  ...operation,
  id: 'op-silver-cell',
  name: 'Running and harvesting the silver cell',
  use: 'every change of current, every harvest',
  ghs: label(['P210', 'P260', 'P280']),
  wear: [chemicalGloves, line('locked', 'Insulated tools; supply off and locked before reaching in.')],
  ventilation: [line('vent', 'Vented; no closed lid over a running cell.')],
  never: [
    never('current', 'More current than the silver can carry', 'hydrogenSulfide', 'Too much current for the silver present: silver sulfide, a spoiled bath, hydrogen sulfide. In steps, agitation up first.'),
    never('acid', 'Strong acid on dark scale', 'hydrogenSulfide', 'Acid on the dark scale frees hydrogen sulfide.', 'from memory'),
    never('spark', 'Flame or spark near the gas', 'fire', 'Hydrogen and hydrogen sulfide catch fire at a spark.', 'from memory'),
    never('mains', 'Wet hands and bus-bars', 'shock', 'Supply off and locked before a hand goes in.', 'common practice, no source'),
  ],
  firstAid: [breathed, skin, eyes],
  spill: [line('off', 'Switch off, ventilate, leave at a smell of rotten eggs: it soon cannot be smelled.')],
  storage: [line('plate', 'Dry plate weighed, bagged, two names, locked.')],
  exposureLimits: [{ value: 'see hydrogen sulfide', source: 'from memory' }],
  deadliest: ['current', 'mains'],
  source: 'US Navy Photography (Advanced) app. I (agitation, current); an electrolytic-silver chapter (sulfide at high voltage); gas and locking from memory.',
}

export const nitrateFilm: CautionCard = {
  ...operation,
  id: 'op-nitrate-film',
  name: 'Handling nitrate-base film',
  use: 'any old 35 mm stock whose base is not proven safe',
  ghs: label(['P210']),
  wear: [line('exit', 'No flame, spark or hot lamp; static under control; know the way out.')],
  ventilation: [line('phone', 'No phone and no charger in a nitrate room unless the safety lead has cleared it.', 'common practice, no source')],
  never: [
    never('fight', 'A burning reel and an extinguisher', 'nitrateFire', 'Never fight a reel that burns: it needs no air and its smoke is poisonous. Out, door shut, alarm.'),
    never('heat', 'Heat above about 85 °C', 'nitrateFire', 'Above about 85 °C it decays fast and heats itself.'),
    never('can', 'A closed, taped can', 'nitrateFire', 'Never tape a can shut: the gas must get out.'),
    never('acetate', 'Acetate film beside it', 'decay', 'Apart from other film: its decay spreads.'),
  ],
  firstAid: [
    line('smoke', 'The smoke is poisonous: out, alarm, fresh air, medical help.'),
    line('watch', 'Red, brown or irritating fume breathed in: lungs can fill hours later. Medical watch for up to 48 hours, even if the person feels well.', 'from memory'),
  ],
  spill: [line('out', 'Leave, close the door, call the fire service.')],
  storage: [line('vault', 'Own cabinets or vaults, vented, cool and dry: 21 °C or below, under 50 % humidity; sprinklers above 23 kg.')],
  deadliest: ['fight', 'heat'],
  source: 'guide to storing nitrate film (2003); NFPA 40 (2001 excerpt). Pairs and drill from memory.',
}

export const wetElectrical: CautionCard = {
  ...operation,
  id: 'op-wet-electrical',
  name: 'Wet floor and electric gear',
  use: 'pumps, heaters, lamps near tanks',
  ghs: label(['P280']),
  wear: [line('boots', 'Non-slip boots, insulated footing.')],
  ventilation: [line('residual', 'Residual-current protection; no wet plugs.')],
  never: [
    never('mains', 'Water and mains', 'shock', 'Water and mains: shock. Dry hands, dry plug, supply off.'),
    never('fittings', 'Fixing bath on copper or steel fittings', 'corrosion', 'Fixing bath eats copper and steel: leaks onto wiring.'),
  ],
  firstAid: [line('cut', 'Cut the supply first; call for help; resuscitate if trained.')],
  spill: [line('squeegee', 'Squeegee the floor, put up the sign, mop.')],
  storage: [line('plugs', 'Plugs above the splash line; cables off the floor.')],
  deadliest: ['mains'],
  source: 'US Army SS0520 names shock and moving parts; the rest common practice, no source.',
}

export const darkVault: CautionCard = {
  ...operation,
  id: 'op-dark-vault',
  name: 'Working in the dark, or in a confined vault',
  use: 'feed, magazines, raw-stock store, vault',
  ghs: label([]),
  wear: [line('two', 'A second person or a timed call-in; tactile marks; a torch for emergency only, outside the dark zone.')],
  ventilation: [line('doors', 'Doors that open from inside; inert-gas or mist alarm means leave.')],
  never: [
    never('flood', 'A gas-flood system and people inside', 'suffocation', 'At the alarm of a gas-flood system: out at once, it leaves no air to breathe.'),
    never('screen', 'Panchromatic stock and any screen', 'fog', 'Panchromatic stock and any screen: the film is lost.'),
    never('alone', 'A rescuer alone', 'suffocation', 'Never in alone to rescue.'),
  ],
  firstAid: [line('air', 'Fresh air, call for help, do not go in alone to rescue.')],
  spill: [],
  storage: [line('floor', 'Nothing on the floor or under sprinklers and detectors.')],
  deadliest: ['flood'],
  source: 'Common practice, no source.',
}

export const movingParts: CautionCard = {
  ...operation,
  id: 'op-moving-parts',
  name: 'Reaching into the machine',
  use: 'threading, squeegees, rollers',
  ghs: label(['P280']),
  wear: [line('cloth', 'No loose cloth, hair tied, no gloves near rollers in motion.')],
  ventilation: [],
  never: [never('rollers', 'Shafts, chains, belts in motion', 'trapped', 'Stop and lock before a hand goes in: shafts, chains and belts trap it.')],
  firstAid: [line('stop', 'Stop the machine, emergency services, do not pull free.')],
  spill: [],
  storage: [line('guards', 'Guards in place.')],
  deadliest: ['rollers'],
  source: 'Film Archives On-Line sect. 9; US Army SS0520.',
}
