import { describe, expect, it } from 'vitest'
import { ownDose } from '../../src/corrections/own-dose.ts'
import type { MaterialId, StationId } from '../../src/plan/ids.ts'
import type { LabPlan } from '../../src/plan/lab-plan.ts'
import type { Material } from '../../src/plan/material.ts'
import { Bench } from './kit.ts'

const acid = 'acid:acetic-acid-28'

const withMaterial = (material: Omit<Material, 'id' | 'for'> & { id: string; for: string[] }) => (plan: LabPlan): void => {
  plan.materials.push(material as Material)
}
const glacial = { id: 'glacial', name: 'Acetic acid, glacial', substance: 'aceticAcid', strength: { kind: 'percent' as const, percentByMass: 99.5, gramsPerMillilitre: 1.0498 }, unit: 'mL' as const, caution: 'acetic-acid-glacial', for: ['neg-1-fix'] }
const sulfuric = { id: 'sulfuric', name: 'Sulfuric acid 10 %', substance: 'sulfuricAcid', strength: { kind: 'percent' as const, percentByMass: 10, gramsPerMillilitre: 1.066 }, unit: 'mL' as const, caution: 'sulfuric-acid', for: ['neg-1-fix'] }
const hydroxide = { id: 'lye', name: 'Sodium hydroxide', substance: 'sodiumHydroxide', strength: { kind: 'solid' as const, form: 'anhydrous' }, unit: 'g' as const, caution: 'sodium-hydroxide', for: ['neg-1-fix'] }
const carbonate = { id: 'soda', name: 'Sodium carbonate', substance: 'sodiumCarbonate', strength: { kind: 'solid' as const, form: 'anhydrous' }, unit: 'g' as const, caution: 'sodium-carbonate', for: ['neg-1-fix'] }

const highPh = (bench: Bench) => bench.confirmed('neg-1-fix-ph', 4.92)
const refusal = (bench: Bench, id = acid) => bench.remedy(highPh(bench), id).refused

/** Asks for a dose of somebody's own choosing: the interlocks alone, without a suggestion behind it. */
const own = (bench: Bench, material: string, amount = 100, unit: 'mL' | 'L' | 'g' = 'mL', station = 'neg-1-fix') =>
  ownDose(bench.state, bench.plan, { station: station as StationId, material: material as MaterialId, amount, unit }, bench.now)!

describe('acid into a fixing bath', () => {
  it('is allowed where sulfite was found in limits within its interval, the bath is cool, exhaust and eyewash are right', () => {
    expect(refusal(new Bench().safe())).toBeUndefined()
  })

  it('is refused while sulfite has never been found', () => {
    const bench = new Bench()
    bench.read('neg-1-fix-temp', 21)
    bench.look('exhaust', true)
    bench.look('eyewash', true)
    expect(refusal(bench)).toMatchObject({ code: 'sulfiteNeverFound', doFirst: { code: 'titrateSulfite' } })
  })

  it('is refused when sulfite was found below its limits, and sulfite is offered before it', () => {
    const bench = new Bench().safe({ sulfite: 9 })
    const exception = highPh(bench)
    expect(bench.remedy(exception, acid).refused).toMatchObject({ code: 'sulfiteNotInLimits', facts: { found: 9 } })
    const codes = bench.remedies(exception).map(({ code }) => code)
    expect(codes.indexOf('sulfite')).toBeGreaterThanOrEqual(0)
    expect(codes.indexOf('sulfite')).toBeLessThan(codes.indexOf('acid'))
  })

  it('is allowed up to the interval of the sulfite check, and refused past it', () => {
    const at = (minutesOld: number) => {
      const bench = new Bench()
      bench.read('neg-1-fix-sulfite', 12)
      bench.wait(minutesOld - 2)
      bench.read('neg-1-fix-temp', 21)
      bench.look('exhaust', true)
      bench.look('eyewash', true)
      return refusal(bench)?.code
    }
    expect(at(24 * 60)).toBeUndefined()
    expect(at(24 * 60 + 1)).toBe('sulfiteTooOld')
  })

  it('is refused where the plan has no sulfite check for that bath', () => {
    const bench = new Bench((plan) => {
      plan.checks = plan.checks.filter(({ id }) => id !== 'neg-1-fix-sulfite')
    })
    bench.read('neg-1-fix-temp', 21)
    bench.look('exhaust', true)
    bench.look('eyewash', true)
    expect(refusal(bench)?.code).toBe('noSulfiteCheck')
  })

  it('judges an old sulfite reading by the limits in force now', () => {
    const bench = new Bench().safe({ sulfite: 10.5 })
    const sulfite = bench.plan.checks.find(({ id }) => id === 'neg-1-fix-sulfite')!
    if (sulfite.kind === 'reading') sulfite.limits.warningLow = 11
    expect(refusal(bench)?.code).toBe('sulfiteNotInLimits')
  })

  it('is allowed at 27 °C and refused above', () => {
    expect(refusal(new Bench().safe({ celsius: 27 }))).toBeUndefined()
    expect(refusal(new Bench().safe({ celsius: 27.1 }))).toMatchObject({ code: 'bathTooHotForAcid', facts: { celsius: 27.1 } })
  })

  it('is refused when nobody knows how warm the bath is', () => {
    const bench = new Bench()
    bench.read('neg-1-fix-sulfite', 12)
    bench.look('exhaust', true)
    bench.look('eyewash', true)
    expect(refusal(bench)).toMatchObject({ code: 'bathTemperatureNotKnown', doFirst: { code: 'readBathTemperature' } })
  })

  it.each(['exhaust', 'eyewash'] as const)('is refused while the %s check is overdue or was not right', (guard) => {
    const without = (right: boolean | undefined) => {
      const bench = new Bench()
      bench.read('neg-1-fix-sulfite', 12)
      bench.read('neg-1-fix-temp', 21)
      bench.look(guard === 'exhaust' ? 'eyewash' : 'exhaust', true)
      if (right !== undefined) bench.look(guard, right)
      return refusal(bench)?.code
    }
    expect(without(true)).toBeUndefined()
    expect(without(undefined)).toBe(`${guard}Overdue`)
    expect(without(false)).toBe(`${guard}NotRight`)
  })

  it('takes the eyewash check of the shift before only until this shift’s own is overdue', () => {
    // Looked at 07:00 in the early shift; the late shift begins at 14:00, its check falls due at 14:15 and is late after an hour.
    const at = (minutesAfterMorning: number) => {
      const bench = new Bench()
      bench.look('eyewash', true)
      bench.look('exhaust', true)
      bench.wait(minutesAfterMorning - 2)
      bench.read('neg-1-fix-sulfite', 12)
      bench.read('neg-1-fix-temp', 21)
      return refusal(bench)?.code
    }
    expect(at(6 * 60 + 74)).toBeUndefined()
    expect(at(6 * 60 + 76)).toBe('exhaustOverdue')
  })

  it('is only ever dilute acetic acid: glacial and other acids are listed, refused', () => {
    const bench = new Bench((plan) => {
      withMaterial(glacial)(plan)
      withMaterial(sulfuric)(plan)
    }).safe()
    const exception = highPh(bench)
    expect(bench.remedy(exception, 'acid:glacial').refused).toMatchObject({ code: 'onlyDiluteAcid', doFirst: { code: 'diluteAcidOutside' } })
    expect(bench.remedy(exception, 'acid:sulfuric').refused).toMatchObject({ code: 'onlyDiluteAcid', doFirst: { code: 'useDiluteAceticAcid' } })
    expect(bench.remedy(exception, acid).refused).toBeUndefined()
  })

  it('is never as it comes from the drum: a stop bath takes it diluted too', () => {
    const bench = new Bench((plan) => {
      for (const it of plan.materials) if (it.id === 'acetic-acid-28') it.for.push('neg-1-rinse' as StationId)
      withMaterial({ ...glacial, for: ['neg-1-rinse'] })(plan)
      withMaterial({ ...sulfuric, for: ['neg-1-rinse'] })(plan)
      withMaterial({ ...sulfuric, id: 'vitriol', strength: { kind: 'percent', percentByMass: 96, gramsPerMillilitre: 1.836 }, for: ['neg-1-rinse'] })(plan)
      const rinse = plan.machines.flatMap(({ stations }) => stations).find(({ id }) => id === 'neg-1-rinse')!
      rinse.kind = 'stop'
      rinse.bath = { litres: 400, headroomLitres: 20, circulationLitresPerMinute: 40, constituents: [{ substance: 'aceticAcid', gramsPerLitre: 12 }] }
    }).safe()
    expect(own(bench, 'glacial', 50, 'mL', 'neg-1-rinse').refused).toMatchObject({ code: 'onlyDiluteAcid', doFirst: { code: 'diluteAcidOutside' } })
    expect(own(bench, 'vitriol', 50, 'mL', 'neg-1-rinse').refused).toMatchObject({ code: 'onlyDiluteAcid', doFirst: { code: 'useDiluteAceticAcid' } })
    expect(own(bench, 'sulfuric', 50, 'mL', 'neg-1-rinse').refused).toBeUndefined()
    expect(own(bench, 'acetic-acid-28', 50, 'mL', 'neg-1-rinse').refused).toBeUndefined()
  })

  it('is told to go in slowly, at the return, exhaust on, with acid into water', () => {
    const bench = new Bench().safe()
    expect(bench.remedy(highPh(bench), acid).how.map(({ code }) => code)).toEqual(['exhaustOn', 'acidIntoWater', 'slowlyAtReturn', 'stopAtCloudOrSmell'])
  })

  it('waits for a repeat that confirms the reading', () => {
    const bench = new Bench().safe()
    const exception = bench.read('neg-1-fix-ph', 4.92)
    expect(bench.remedy(exception, acid).refused).toMatchObject({ code: 'notYetConfirmed', doFirst: { code: 'repeatReading' } })
    bench.wait(2).read('neg-1-fix-ph', 4.91)
    expect(bench.remedy(exception, acid).refused).toBeUndefined()
  })

  it('waits for the mixing of the portion before, and for its re-check', () => {
    const bench = new Bench().safe()
    const exception = highPh(bench)
    bench.pour(bench.remedy(exception, acid), { mix: false })
    bench.wait(5)
    expect(bench.remedy(exception, acid).refused).toMatchObject({ code: 'stillMixing' })
    bench.wait(30)
    expect(bench.remedy(exception, acid).refused).toMatchObject({ code: 'readAgainFirst', doFirst: { code: 'recheck' } })
    bench.read('neg-1-fix-ph', 4.74)
    expect(bench.remedy(exception, acid).refused).toBeUndefined()
  })

  it('comes after sulfite where both are out: sulfite, mixing, both read anew, and the acid worked out from the new pH', () => {
    const bench = new Bench().safe()
    const low = bench.confirmed('neg-1-fix-sulfite', 7)
    const exception = highPh(bench)
    expect(bench.remedy(exception, acid).refused).toMatchObject({ code: 'sulfiteFirst' })
    bench.pour(bench.remedy(low, 'sulfite:sulfite-solution'))
    expect(bench.remedy(exception, acid).refused?.code).toBe('sulfiteFirst')
    bench.read('neg-1-fix-sulfite', 11.5)
    // In limits again; but the sulfite has moved the pH, so the old reading no longer speaks.
    expect(bench.remedy(exception, acid).refused).toMatchObject({ code: 'readAgainFirst', doFirst: { code: 'recheck', facts: { check: 'neg-1-fix-ph' } } })
    bench.read('neg-1-fix-ph', 5.02)
    // The sulfite solution has filled the tank to its lip; the overflow takes it back to the mark.
    expect(bench.remedy(exception, acid).refused?.code).toBe('noHeadroom')
    bench.read('neg-1-fix-level', 0)
    expect(bench.opened(bench.remedy(exception, acid)).working!.inputs.measuredPh).toBe(5.02)
  })
})

describe('acid into a developer', () => {
  it('is refused, and the mild remedy offered in its place', () => {
    const bench = new Bench((plan) => {
      plan.materials.find(({ id }) => id === 'acetic-acid-28')!.for.push('neg-1-dev' as StationId)
    }).safe()
    bench.read('neg-1-dev-temp', 21)
    const exception = bench.confirmed('neg-1-dev-ph', 8.7)
    expect(bench.remedy(exception, 'mildAcid:acetic-acid-28').refused).toMatchObject({ code: 'noAcidIntoDeveloper', doFirst: { code: 'useMildAcid' } })
    expect(bench.remedy(exception, 'mildAcid:boric-acid').refused).toBeUndefined()
    expect(own(bench, 'acetic-acid-28', 1, 'mL', 'neg-1-dev').refused?.code).toBe('noAcidIntoDeveloper')
  })

  it('is a bisulfite too, and not the plain sulfite that the bath is made of', () => {
    const bench = new Bench(
      withMaterial({ id: 'bisulfite', name: 'Sodium bisulfite', substance: 'sodiumBisulfite', strength: { kind: 'solid', form: 'anhydrous' }, unit: 'g', caution: 'sodium-metabisulfite', for: ['neg-1-dev'] }),
    )
    expect(own(bench, 'bisulfite', 10, 'g', 'neg-1-dev').refused?.code).toBe('noAcidIntoDeveloper')
    expect(own(bench, 'sodium-sulfite', 10, 'g', 'neg-1-dev').refused).toBeUndefined()
  })

  it('is refused in whatever bath holds a developing agent, and not in a rinse that holds none', () => {
    const bench = new Bench((plan) => {
      const rinse = plan.machines[0]!.stations.find(({ id }) => id === 'neg-1-rinse')!
      rinse.bath = { litres: 200, headroomLitres: 10, circulationLitresPerMinute: 50, constituents: [{ substance: 'metol', gramsPerLitre: 1 }] }
      plan.machines[1]!.stations.find(({ id }) => id === 'pos-2-rinse')!.bath = { litres: 200, headroomLitres: 10, circulationLitresPerMinute: 50, constituents: [{ substance: 'aceticAcid', gramsPerLitre: 5 }] }
      plan.materials.find(({ id }) => id === 'acetic-acid-28')!.for.push('neg-1-rinse' as StationId, 'pos-2-rinse' as StationId)
    }).safe()
    expect(own(bench, 'acetic-acid-28', 10, 'mL', 'neg-1-rinse').refused?.code).toBe('noAcidIntoDeveloper')
    expect(own(bench, 'acetic-acid-28', 10, 'mL', 'pos-2-rinse').refused).toBeUndefined()
  })

  it('is bicarbonate in a carbonate bath', () => {
    const bench = new Bench()
    bench.read('pos-2-dev-temp', 21)
    const exception = bench.confirmed('pos-2-dev-ph', 10.2)
    expect(bench.remedies(exception).filter(({ dose }) => dose).map(({ id }) => id)).toEqual(['mildAcid:sodium-bicarbonate'])
  })
})

describe('alkali into a fixing bath with alum', () => {
  it('is refused: hydroxide and carbonate alike', () => {
    const bench = new Bench((plan) => {
      withMaterial(hydroxide)(plan)
      withMaterial(carbonate)(plan)
    }).safe()
    const exception = bench.confirmed('neg-1-fix-ph', 3.85)
    expect(bench.remedy(exception, 'alkali:lye').refused).toMatchObject({ code: 'noAlkaliIntoAlum', doFirst: { code: 'useSulfiteSolution' } })
    expect(bench.remedy(exception, 'alkali:soda').refused?.code).toBe('noAlkaliIntoAlum')
    expect(bench.remedy(exception, 'sulfite:sulfite-solution').refused).toBeUndefined()
  })

  it('is not what holds it back where there is no alum: there it is the acid that it would meet', () => {
    const bench = new Bench((plan) => {
      withMaterial(hydroxide)(plan)
      for (const { stations } of plan.machines) for (const { bath } of stations) if (bath) bath.constituents = bath.constituents.filter(({ substance }) => substance !== 'potassiumAlum')
    }).safe()
    expect(own(bench, 'lye', 10, 'g').refused).toMatchObject({ code: 'neverTogether', facts: { result: 'heat' } })
  })
})

describe('alum', () => {
  it('goes in only after the acid is in', () => {
    const bench = new Bench().safe()
    expect(own(bench, 'potassium-alum', 500, 'g').refused).toMatchObject({ code: 'acidBeforeAlum' })
    bench.read('neg-1-fix-ph', 4.9)
    bench.read('neg-1-fix-ph', 4.9)
    expect(own(bench, 'potassium-alum', 500, 'g').refused?.code).toBe('acidBeforeAlum')
    bench.read('neg-1-fix-ph', 4.5)
    expect(own(bench, 'potassium-alum', 500, 'g').refused).toBeUndefined()
  })
})

describe('the size of a dose', () => {
  it('stays within the headroom', () => {
    const bench = new Bench((plan) => {
      plan.machines[0]!.stations.find(({ id }) => id === 'neg-1-fix')!.bath!.headroomLitres = 0.4
    }).safe()
    const remedy = bench.remedy(highPh(bench), acid)
    expect(remedy.dose!.cappedBy).toBe('headroom')
    expect(bench.opened(remedy).amount).toBeCloseTo(400, 6)
    expect(own(bench, 'acetic-acid-28', 401).refused).toMatchObject({ code: 'noHeadroom', facts: { litresLeft: 0.4 } })
    expect(own(bench, 'acetic-acid-28', 400).refused).toBeUndefined()
  })

  it('counts what was poured before against the headroom, until the level is found right again', () => {
    const bench = new Bench((plan) => {
      plan.machines[0]!.stations.find(({ id }) => id === 'neg-1-fix')!.bath!.headroomLitres = 0.4
    }).safe()
    const exception = highPh(bench)
    bench.pour(bench.remedy(exception, acid))
    // 400 mL move this bath by 0.01: so little is read twice.
    bench.read('neg-1-fix-ph', 4.91)
    bench.wait(2).read('neg-1-fix-ph', 4.91)
    expect(bench.remedy(exception, acid).refused).toMatchObject({ code: 'noHeadroom', doFirst: { code: 'drawOffFirst' } })
    bench.read('neg-1-fix-level', 0)
    expect(bench.remedy(exception, acid).refused).toBeUndefined()
  })

  it('stays within the plan’s safe single dose', () => {
    const bench = new Bench((plan) => {
      plan.materials.find(({ id }) => id === 'acetic-acid-28')!.safeSingleDosePerLitre = 0.5
    }).safe()
    const remedy = bench.remedy(highPh(bench), acid)
    expect(remedy.dose).toMatchObject({ cappedBy: 'safeSingleDose', staged: true })
    expect(bench.opened(remedy).amount).toBeCloseTo(320, 6)
    expect(own(bench, 'acetic-acid-28', 321).refused).toMatchObject({ code: 'aboveSafeSingleDose' })
    expect(own(bench, 'acetic-acid-28', 320).refused).toBeUndefined()
  })
})

describe('materials', () => {
  it('that must never meet stop the flow and say what happens', () => {
    const bench = new Bench(
      withMaterial({ id: 'bleach', name: 'Sodium hypochlorite', substance: 'sodiumHypochlorite', strength: { kind: 'molar', molPerLitre: 1 }, unit: 'mL', caution: 'sodium-hypochlorite', for: ['neg-1-fix', 'neg-1-dev'] }),
    ).safe()
    expect(own(bench, 'bleach').refused).toMatchObject({ code: 'neverTogether', doFirst: { code: 'doNotPour' } })
    expect(own(bench, 'bleach', 100, 'mL', 'neg-1-dev').refused?.code).toBe('neverTogether')
  })

  it('that the plan does not let into a bath are refused there', () => {
    const bench = new Bench().safe()
    expect(own(bench, 'metol', 10, 'g').refused?.code).toBe('notForThisBath')
    expect(own(bench, 'metol', 10, 'g', 'neg-1-dev').refused).toBeUndefined()
  })

  it('whose caution this version does not have are refused', () => {
    const bench = new Bench((plan) => {
      plan.materials.find(({ id }) => id === 'acetic-acid-28')!.caution = 'card-of-tomorrow'
    }).safe()
    expect(refusal(bench)).toMatchObject({ code: 'noCautionCard', facts: { card: 'card-of-tomorrow' } })
  })

  it('that were given the card of a harmless one are refused', () => {
    const bench = new Bench((plan) => {
      plan.materials.find(({ id }) => id === 'acetic-acid-28')!.caution = 'potassium-alum'
    }).safe()
    expect(refusal(bench)).toMatchObject({ code: 'cautionOfAnother' })
  })
})
