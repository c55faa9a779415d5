import type { Material } from '../../plan/material.ts'
import { isAcid, isAcidSalt, isAlkali } from '../nature.ts'
import type { Remedy } from '../remedy.ts'
import type { Builder } from '../row.ts'
import { say } from '../say.ts'
import type { Situation } from '../situation.ts'
import { doseRemedy } from './dose.ts'
import { phDose } from './ph.ts'

const holds = ({ station }: Situation, ...substances: readonly string[]): boolean =>
  (station.bath?.constituents ?? []).some(({ substance }) => substances.includes(substance))

const forHere = (situation: Situation): Material[] => situation.plan.materials.filter((material) => material.for.includes(situation.station.id))

const dosesOf = (situation: Situation, source: string, code: 'mildAcid' | 'alkali', materials: readonly Material[]): Remedy[] =>
  materials.flatMap(
    (material) =>
      doseRemedy(situation, material, {
        code,
        says: say(code === 'mildAcid' ? 'mildAcidDose' : 'alkaliDose', { material: material.id }),
        how: [say('dissolveOutside'), say('smallSteps'), say('atReturn'), say('stripAfter')],
        wait: 'pH',
        source,
        compute: (factor) => phDose(situation, material, factor),
      }) ?? [],
  )

/**
 * A developer's pH down: boric acid in a borax bath, bicarbonate in a carbonate bath. An acid that the plan lets into this bath is listed after
 * them, refused, so that whoever looks for it reads why.
 */
export const mildAcid: Builder = (situation, { source }) => {
  const isMild = ({ substance }: Material): boolean =>
    (substance === 'boricAcid' && holds(situation, 'borax', 'sodiumMetaborate')) ||
    (substance === 'sodiumBicarbonate' && holds(situation, 'sodiumCarbonate', 'potassiumCarbonate'))
  const listed = forHere(situation)
  return dosesOf(situation, source, 'mildAcid', [...listed.filter(isMild), ...listed.filter((it) => isAcid(it) || isAcidSalt(it))])
}

const alkalis: readonly string[] = ['borax', 'sodiumMetaborate', 'sodiumCarbonate', 'potassiumCarbonate', 'sodiumHydroxide', 'potassiumHydroxide']

/** A developer's pH up: the alkali of its own formula, so a hydroxide only where the formula has one. */
export const formulaAlkali: Builder = (situation, { source }) =>
  dosesOf(situation, source, 'alkali', forHere(situation).filter(({ substance }) => alkalis.includes(substance) && holds(situation, substance)))

/** What somebody may reach for and must not: an alkali that the plan lets into a fixing bath, listed with the reason against it. */
export const alkaliRefused: Builder = (situation, { source }) => dosesOf(situation, source, 'alkali', forHere(situation).filter(isAlkali)).filter(({ refused }) => refused)
