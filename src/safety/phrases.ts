import type { CardLine, NeverLine } from './card.ts'

/** Sentences that many cards share. First aid after the international chemical safety cards and the general label phrases. */
export const line = (key: string, says: string, source?: string): CardLine => (source ? { key, says, source } : { key, says })

export const never = (key: string, what: string, result: string, says: string, source?: string): NeverLine =>
  source ? { key, with: what, result, says, source } : { key, with: what, result, says }

export const eyes = line('eyes', 'Eyes: rinse at once with plenty of water for at least 15 minutes, lids open, contact lenses out if that is easy. Get medical help.')
export const eyesAlkali = line(
  'eyes',
  'Eyes: rinse at once with plenty of water for at least 30 minutes, lids open, and go on rinsing on the way to help: alkali keeps on burning. Contact lenses out if that is easy.',
  'from memory',
)
export const skin = line('skin', 'Skin: take off wet clothing, rinse with plenty of water.')
export const breathed = line('breathed', 'Breathed in: fresh air and rest. Medical help if cough or breathing trouble lasts.')
export const swallowed = line('swallowed', 'Swallowed: rinse the mouth, do not cause vomiting, call a poison centre or a doctor.')
export const fourAids = [eyes, skin, breathed, swallowed] as const

export const face = line('face', 'Face shield over splash goggles.')
export const acidGloves = line('gloves', 'Acid-resistant gloves with long cuffs; apron; closed shoes.')
export const alkaliGloves = line('gloves', 'Alkali-resistant gloves with long cuffs; apron; closed shoes.')
export const chemicalGloves = line('gloves', 'Chemical-resistant gloves (the sheet names the material), splash goggles, apron.')
export const powder = line('powder', 'Gloves, goggles, apron; dust respirator where extraction does not take the dust.')

export const exhaust = line('exhaust', 'Local exhaust running, drawing away from the face.')
export const eyewash = line('eyewash', 'Eyewash tested and within reach.')
export const dust = line('weighing', 'Weigh powder under extraction, out of the draught.')
export const fumeHood = line('fumeHood', 'Work in the fume hood, sash down.')

export const pregnancy = line('pregnancy', 'Not to be weighed by anyone pregnant or planning it without occupational-health advice.')
export const phosgeneLater = line(
  'delayed',
  'Gas from hot solvent (phosgene) can harm the lungs hours later: medical watch for up to 48 hours, even when the person feels well.',
  'from memory',
)

/** Label phrases of what burns skin and eyes (skin corrosion, category 1). */
export const corrosiveP = [
  'P260', 'P264', 'P280', 'P301+P330+P331', 'P303+P361+P353', 'P304+P340', 'P305+P351+P338', 'P310', 'P405', 'P501',
] as const
