import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { darkRuleOf, redThemeSays } from '../../src/safety/dark-work.ts'
import { emergencyCards } from '../../src/safety/emergency.ts'
import { mayMeet, pairs } from '../../src/safety/pairs.ts'
import { thingsOf, type Thing } from '../../src/safety/things.ts'
import { mayGoInto, wasteDrums } from '../../src/safety/waste.ts'

const things = [...new Set(pairs.flatMap(({ a, b }) => [a, b]))]
const someThings = fc.uniqueArray(fc.constantFrom(...things), { minLength: 1, maxLength: 4 })

describe('materials that must never meet', () => {
  it('are the same whichever is named first', () => {
    fc.assert(
      fc.property(someThings, someThings, (a, b) => {
        expect(mayMeet(a, b)).toEqual(mayMeet(b, a))
      }),
    )
  })

  it('never become harmless by being called more things', () => {
    const rank = { meet: 0, slowly: 1, never: 2 }
    fc.assert(
      fc.property(someThings, someThings, fc.constantFrom(...things.filter((it) => it !== 'diluteAcid')), (a, b, more) => {
        expect(rank[mayMeet([...a, more], b).may]).toBeGreaterThanOrEqual(rank[mayMeet(a, b).may])
      }),
    )
  })

  it.each<[Thing, Thing, string]>([
    // One row of the trade's table each; sources stand beside the rows of the table itself.
    ['sulfite', 'acid', 'sulfurDioxide'],
    ['developer', 'acid', 'sulfurDioxide'],
    ['thiosulfate', 'acid', 'sulfur'],
    ['alum', 'hydroxide', 'alumSludge'],
    ['concentratedAcid', 'water', 'spatter'],
    ['concentratedAcid', 'hydroxide', 'heat'],
    ['sulfuricAcid', 'organics', 'fire'],
    ['aceticAcidGlacial', 'oxidiser', 'explosion'],
    ['hypochlorite', 'acid', 'chlorine'],
    ['hypochlorite', 'ammonia', 'chloramines'],
    ['hypochlorite', 'thiosulfate', 'heat'],
    ['sulfide', 'acid', 'hydrogenSulfide'],
    ['ferricyanide', 'strongAcid', 'hydrogenCyanide'],
    ['ammonia', 'iodine', 'explosiveSolid'],
    ['ammonia', 'silverSolution', 'explosiveSolid'],
    ['ether', 'phone', 'fire'],
    ['ether', 'air', 'explosivePeroxide'],
    ['chlorinatedSolvent', 'hotSurface', 'phosgene'],
    ['nitrateFilm', 'closedCan', 'nitrateFire'],
    ['water', 'mains', 'shock'],
  ])('%s and %s: %s', (a, b, result) => {
    expect(mayMeet(a, b)).toMatchObject({ may: 'never', result })
  })

  it('leave the trade its own dose: 28 % acetic acid into a fixing bath, slowly', () => {
    const dilute = thingsOf('aceticAcid', { kind: 'percent', percentByMass: 28, gramsPerMillilitre: 1.0361 })
    const glacial = thingsOf('aceticAcid', { kind: 'percent', percentByMass: 99.5, gramsPerMillilitre: 1.0498 })
    expect(mayMeet(dilute, ['thiosulfate', 'sulfite']).may).toBe('slowly')
    expect(mayMeet(glacial, ['thiosulfate', 'sulfite']).may).toBe('never')
    expect(mayMeet(dilute, 'developer').may).toBe('never')
  })

  it('say nothing against what is harmless', () => {
    expect(mayMeet('bromide', 'carbonate')).toEqual({ may: 'meet' })
  })
})

describe('waste drums', () => {
  const drum = (id: string) => wasteDrums.find((it) => it.id === id)!
  it('keep acid from hypochlorite, both ways', () => {
    expect(mayGoInto(drum('acid'), ['hypochlorite'])).toEqual({ may: false, why: 'chlorine' })
    expect(mayGoInto(drum('hypochlorite'), ['acid'])).toEqual({ may: false, why: 'chlorine' })
  })
  it('take nothing into the ether drum but ether, and ether nowhere else', () => {
    for (const thing of things.filter((it) => it !== 'ether')) expect(mayGoInto(drum('ether'), [thing]).may, thing).toBe(false)
    expect(mayGoInto(drum('ether'), ['ether'])).toEqual({ may: true })
    for (const it of wasteDrums.filter(({ id }) => id !== 'ether')) expect(mayGoInto(it, ['ether']).may, it.id).toBe(false)
  })
  it('take what they are for', () => {
    for (const it of wasteDrums) {
      const own = it.holds[0]!
      expect(mayGoInto(it, [own]), it.id).toEqual({ may: true })
    }
  })
  it('take no dilute acid into the silver drum either', () => {
    expect(mayGoInto(drum('silverBearing'), ['diluteAcid']).may).toBe(false)
  })
})

describe('the emergency card', () => {
  it('covers eyes, skin, swallowing, gas, spill and fire', () => {
    expect(emergencyCards.map(({ id }) => id)).toEqual(expect.arrayContaining(['eyes', 'skin', 'swallowed', 'breathed', 'spill', 'gasSmell', 'fire']))
    for (const { steps, source } of emergencyCards) {
      expect(steps.length).toBeGreaterThan(0)
      expect(source).not.toBe('')
    }
  })
})

describe('dark work', () => {
  it('lets no stock near a screen', () => {
    for (const light of ['panchromatic', 'orthochromatic', 'blueSensitive'] as const) expect(darkRuleOf(light).phoneStaysDark).toBe(true)
  })
  it('never calls the red theme safe for film', () => {
    expect(redThemeSays).toMatch(/not safe for film/)
  })
})
