import type { PairCode } from '../../../projections/pairs.ts'

/** What to do about two readings that together say more than each alone. Common practice of the tank room, no source. */
export const pairs = {
  read: (check: string, value: string, time: string): string => `${check} ${value} at ${time}`,
  notRead: (check: string): string => `${check}: not read about the same time`,
  apartBy: (by: string, within: string): string => `${by} apart; they should agree within ${within}`,
  readNow: (check: string): string => `Read now: ${check}`,
  says: {
    evaporation: 'Level low and gravity high: evaporation. Water only, to the mark.',
    lossOfBath: 'Level low, gravity in limits: a leak, carry-out, or the rate is low.',
    waterIn: 'Level high and gravity low: water comes in. A leaking coil, or wash water back?',
    wrongMix: 'Gravity high, level in limits: the replenisher is over-strength.',
    weakMix: 'Gravity low, level in limits: diluted, or an exhausted mix.',
    overfed: 'Level high, gravity in limits: the rate is high, or the overflow is blocked.',
    lossAndDilution: 'Both low: bath was lost and water came in.',
    concentrated: 'Both high: over-strength replenisher, fed too fast.',
    apart: 'These two should agree and do not.',
    readTheOther: 'Read the other one of the pair now; together they say what it is.',
  } satisfies Record<PairCode, string>,
  todo: {
    evaporation: ['Add water only, slowly at the return, to the mark.', 'Let it mix, then read both again.', 'If it comes back each shift: cover the tank when it stands, look at the extraction.'],
    lossOfBath: ['Look for a leak: drain valve, pump seal, hoses.', 'Look at squeegees and carry-out.', 'Fill up with replenisher or bath, never with water; raise the rate only when nothing leaks.'],
    waterIn: ['Close the coil’s water and watch the level.', 'Look at the wash: does its water come back over the lip?', 'Bleed to the mark by the stated route, then bring the strength back; titrate before adding.'],
    wrongMix: ['Stop feeding that replenisher.', 'Read its specific gravity and its mixing sheet.', 'Titrate the bath before diluting it.'],
    weakMix: ['Titrate the bath: what is weak?', 'Look at the replenisher’s mixing sheet and its specific gravity.', 'Add what titration asks for, in portions.'],
    overfed: ['Look at the overflow: is it free?', 'Measure the replenisher’s rate; set it to the plan.'],
    lossAndDilution: ['Find the leak first, then where water comes in.', 'Titrate, then fill with bath or replenisher.'],
    concentrated: ['Stop feeding.', 'Read the replenisher’s specific gravity and its mixing sheet.', 'Titrate before bleeding or diluting.'],
    apart: ['Read both again, the thermometer stirred in and settled.', 'Trust the one that was last proven; have the other put right.', 'Until they agree, no correction goes by the one in doubt.'],
    readTheOther: ['One alone misleads: read the other before anything is added or turned.'],
  } satisfies Record<PairCode, readonly string[]>,
}
