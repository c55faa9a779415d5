import type { Material } from '../plan/material.ts'
import { thingsOf } from '../safety/things.ts'

/** How a material acts, for the interlocks. Boric acid and bicarbonate are mild: they count as neither acid nor alkali here. */
type Asked = Material | 'water'

const is = (material: Asked, ...things: readonly ReturnType<typeof thingsOf>[number][]): boolean =>
  material !== 'water' && thingsOf(material.substance, material.strength).some((it) => things.includes(it))

export const isAcid = (material: Asked): boolean => is(material, 'acid')

/** Bisulfites: acid enough to free sulfur dioxide from their own kind. */
export const isAcidSalt = (material: Asked): boolean =>
  material !== 'water' && ['sodiumBisulfite', 'sodiumMetabisulfite', 'potassiumMetabisulfite'].includes(material.substance)

export const isHydroxide = (material: Asked): boolean => is(material, 'hydroxide', 'ammonia')

/** Hydroxide or carbonate; bicarbonate too, which foams in acid all the same. */
export const isAlkali = (material: Asked): boolean => is(material, 'hydroxide', 'ammonia', 'carbonate')

/** Acids and hydroxides: what is halved, and never scaled above the computed amount by one person alone. */
export const isStrong = (material: Asked): boolean => isAcid(material) || isHydroxide(material)

/** For the bound on scaling carbonate counts as alkali; mild salts do not. */
export const isAcidOrAlkali = (material: Asked): boolean =>
  isStrong(material) || (material !== 'water' && ['sodiumCarbonate', 'potassiumCarbonate'].includes(material.substance))
