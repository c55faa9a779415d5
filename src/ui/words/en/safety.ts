import { deferral } from '../../../safety/emergency.ts'

export const safety = {
  title: 'Safety cards',
  kinds: { mixture: 'Baths and mixtures', chemical: 'Chemicals', gas: 'Gases', operation: 'Work' },
  before: 'Before you pour',
  noCard: (card: string): string => `This version has no safety card “${card}”. Work on only by the product’s own safety data sheet, and with whoever is trained for it.`,
  locked: 'Unlock the phone first: a caution is confirmed by a person.',
  amountAfter: 'The amount is shown when every line above has been held.',
  deferral,
  /** In another language: how far its cautions can be relied on. */
  translation: '',
  own: 'Written by the laboratory itself. Nobody outside it has checked these words.',
  ownLine: 'the laboratory’s own words',
  ownTitle: 'The laboratory’s own',
  ownVersion: (version: number): string => `The laboratory’s own words, version ${version}.`,
  /** A sentence of a caution, which `safety/` has in English. */
  say: (english: string): string => english,
  signal: { Danger: 'Danger', Warning: 'Warning' },
  sections: {
    never: 'Must never happen',
    wear: 'Wear and air',
    firstAid: 'First aid',
    more: 'Spill, storage, label codes',
    spill: 'Spill',
    storage: 'Storage',
    hazards: 'Hazard statements (UN GHS), in our own words',
    regional: 'Regional statements, not in the UN’s list',
    precautions: 'Precautions (UN GHS), in our own words',
    limits: 'Limits in air',
  },
  version: (version: number, source: string): string => `Version ${version}. ${source}`,
  pictograms: {
    GHS01: 'Exploding bomb: explosive', GHS02: 'Flame: catches fire', GHS03: 'Flame over circle: feeds a fire', GHS04: 'Gas cylinder: gas under pressure', GHS05: 'Corrosion: burns skin and eyes, eats metal',
    GHS06: 'Skull and crossbones: poisonous', GHS07: 'Exclamation mark: harmful, irritates', GHS08: 'Health hazard: serious harm over time', GHS09: 'Environment: poisonous to life in water',
  } as Record<string, string>,
}
