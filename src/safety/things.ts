import type { Material } from '../plan/material.ts'

/** What a material counts as in the table of pairs. A material is several of these: 28 % acetic acid is `acid` and `diluteAcid`. */
export type Thing =
  | 'acid' | 'diluteAcid' | 'strongAcid' | 'concentratedAcid' | 'sulfuricAcid' | 'hydrochloricAcid' | 'aceticAcidGlacial'
  | 'sulfite' | 'thiosulfate' | 'ammoniumThiosulfate' | 'alum' | 'hydroxide' | 'carbonate' | 'ammonia' | 'ammoniumSalt'
  | 'hypochlorite' | 'sulfide' | 'sulfideScale' | 'ferricyanide' | 'dichromate' | 'permanganate' | 'oxidiser' | 'peroxide'
  | 'iodine' | 'silverSolution' | 'bromide' | 'formaldehyde' | 'mercury'
  | 'ether' | 'flammableSolvent' | 'chlorinatedSolvent' | 'organics' | 'nitrateFilm'
  | 'water' | 'mains' | 'ignition' | 'phone' | 'hotSurface' | 'air' | 'closedCan' | 'lightMetal' | 'developer'

/** Acetic acid up to this strength counts as dilute, as it does in the trade (28 %, 1.036 g/mL). US Army SS0513 for the figure. */
export const mostDilutePercent = 28
// 28 % by mass at 1.0361 g/mL and 60.05 g/mol (Perry, from memory), rounded up so that a jug labelled 28 % passes in either unit.
export const mostDiluteMolPerLitre = 4.85

/** From here on an acid is concentrated: water poured into it spits. Common practice, no source. */
const concentratedPercent = 60
const concentratedMolPerLitre = 10

const bySubstance: { readonly [substance: string]: readonly Thing[] } = {
  sodiumSulfite: ['sulfite'],
  potassiumSulfite: ['sulfite'],
  sodiumBisulfite: ['sulfite'],
  sodiumMetabisulfite: ['sulfite'],
  potassiumMetabisulfite: ['sulfite'],
  sodiumThiosulfate: ['thiosulfate'],
  ammoniumThiosulfate: ['thiosulfate', 'ammoniumThiosulfate', 'ammoniumSalt'],
  ammoniumChloride: ['ammoniumSalt'],
  ammonium: ['ammoniumSalt'],
  potassiumAlum: ['alum'],
  potassiumChromeAlum: ['alum'],
  aluminiumSulfate: ['alum'],
  sodiumHydroxide: ['hydroxide'],
  potassiumHydroxide: ['hydroxide'],
  ammonia: ['ammonia'],
  sodiumCarbonate: ['carbonate'],
  potassiumCarbonate: ['carbonate'],
  sodiumBicarbonate: ['carbonate'],
  sodiumHypochlorite: ['hypochlorite', 'oxidiser'],
  sodiumSulfide: ['sulfide'],
  potassiumFerricyanide: ['ferricyanide'],
  potassiumDichromate: ['dichromate', 'oxidiser'],
  potassiumPermanganate: ['permanganate', 'oxidiser'],
  hydrogenPeroxide: ['peroxide', 'oxidiser'],
  iodine: ['iodine'],
  silverNitrate: ['silverSolution', 'oxidiser'],
  potassiumBromide: ['bromide'],
  formaldehyde: ['formaldehyde'],
  hydroquinone: ['developer'],
  metol: ['developer'],
  phenidone: ['developer'],
  diethylEther: ['ether', 'flammableSolvent', 'organics'],
  ethylAcetate: ['flammableSolvent', 'organics'],
  isopropanol: ['flammableSolvent', 'organics'],
  tetrachloroethylene: ['chlorinatedSolvent'],
  water: ['water'],
}

const strengthOf = (strength: Material['strength']): { dilute: boolean; concentrated: boolean } => {
  switch (strength.kind) {
    case 'percent':
      return { dilute: strength.percentByMass <= mostDilutePercent, concentrated: strength.percentByMass >= concentratedPercent }
    case 'molar':
      return { dilute: strength.molPerLitre <= mostDiluteMolPerLitre, concentrated: strength.molPerLitre >= concentratedMolPerLitre }
    case 'solid':
      return { dilute: false, concentrated: false }
  }
}

/** What a substance counts as; with a strength, whether it is a dilute or a concentrated acid. */
export const thingsOf = (substance: string, strength?: Material['strength']): readonly Thing[] => {
  const own = strength ? strengthOf(strength) : { dilute: false, concentrated: false }
  switch (substance) {
    case 'aceticAcid':
      return own.dilute ? ['acid', 'diluteAcid'] : ['acid', 'strongAcid', ...(own.concentrated ? (['concentratedAcid', 'aceticAcidGlacial', 'organics'] as const) : [])]
    case 'citricAcid':
      return ['acid']
    case 'phosphoricAcid':
      return ['acid', 'strongAcid', ...(own.concentrated ? (['concentratedAcid'] as const) : [])]
    case 'sulfuricAcid':
      return ['acid', 'strongAcid', 'sulfuricAcid', ...(own.concentrated ? (['concentratedAcid'] as const) : [])]
    case 'hydrochloricAcid':
      return ['acid', 'strongAcid', 'hydrochloricAcid', ...(own.concentrated ? (['concentratedAcid'] as const) : [])]
    case 'nitricAcid':
      return ['acid', 'strongAcid', 'oxidiser', ...(own.concentrated ? (['concentratedAcid'] as const) : [])]
    default:
      return bySubstance[substance] ?? []
  }
}
