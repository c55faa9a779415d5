import { describe, expect, it } from 'vitest'
import { core } from '../../src/ui/words/en/core.ts'
import { rooms } from '../../src/ui/words/en/rooms.ts'
import { chosenLanguage } from '../../src/ui/boot/language.ts'
import { linesOf } from '../../src/safety/card.ts'
import { cards } from '../../src/safety/cards.ts'
import { darkRuleOf, redThemeSays } from '../../src/safety/dark-work.ts'
import { emergencyCards } from '../../src/safety/emergency.ts'
import { knownCodes, statementsOf } from '../../src/safety/statements.ts'
import { wasteDrums } from '../../src/safety/waste.ts'
import { safetyLines } from '../../src/ui/words/es/safety/lines.ts'
import { saidByFingerprint } from '../../src/ui/words/es/safety/said.ts'
import { fingerprint } from '../../src/ui/words/fingerprint.ts'
import { translation } from '../../src/ui/words/es/translation.ts'
import { translatedWords } from '../../src/ui/words/translation.ts'

type Leaf = { path: string; it: unknown }

const leaves = (it: unknown, path = ''): Leaf[] => {
  if (typeof it !== 'object' || it === null || Array.isArray(it)) return [{ path, it }]
  return Object.entries(it).flatMap(([key, below]) => leaves(below, path ? `${path}.${key}` : key))
}

const english = leaves({ ...core, ...rooms })
const spanish = new Map(leaves(translation).map(({ path, it }) => [path, it]))

/** Data rather than words, or the same in both. */
const isOfBoth = (path: string): boolean => /^(now\.states|plan\.propose\.source)$/.test(path)

describe('Spanish', () => {
  it('has every sentence that English has', () => {
    expect(english.filter(({ path }) => !isOfBoth(path) && !spanish.has(path)).map(({ path }) => path)).toEqual([])
  })

  it('says nothing that English does not', () => {
    const known = new Set(english.map(({ path }) => path))
    expect([...spanish.keys()].filter((path) => !known.has(path))).toEqual([])
  })

  it('takes the same facts into each sentence', () => {
    const arity = (it: unknown): unknown => (typeof it === 'function' ? it.length : Array.isArray(it) ? `list of ${it.length}` : typeof it)
    const differ = english.filter(({ path, it }) => spanish.has(path) && arity(it) !== arity(spanish.get(path)))
    // A sentence that needs one of its facts less may leave it away; one that wants more would print “undefined”.
    const wrong = differ.filter(({ path, it }) => typeof it !== 'function' || typeof spanish.get(path) === 'undefined' || Number(arity(spanish.get(path))) > it.length)
    expect(wrong.filter(({ it, path }) => !(typeof it === 'function' && typeof spanish.get(path) === 'string')).map(({ path }) => path)).toEqual([])
  })

  it('has not left a sentence in English', () => {
    const same = english.filter(({ path, it }) => typeof it === 'string' && / /.test(it) && it === spanish.get(path) && !isOfBoth(path))
    expect(same.map(({ path }) => path)).toEqual([])
  })

  it('falls back to English where a sentence is still missing', () => {
    const words = translatedWords({ a: { one: 'one', two: (n: number) => `two ${n}` }, list: ['x', 'y'] }, { a: { one: 'uno' } })
    expect([words.a.one, words.a.two(2), words.list]).toEqual(['uno', 'two 2', ['x', 'y']])
  })
})

/** Every sentence of a caution that a screen can show. */
const cautions = new Set([
  ...cards.flatMap((card) => [card.name, card.use, ...linesOf(card).map(({ says }) => says)]),
  ...emergencyCards.flatMap(({ title, steps }) => [title, ...steps.map(({ says }) => says)]),
  ...(['panchromatic', 'orthochromatic', 'blueSensitive'] as const).map((light) => darkRuleOf(light).says),
  redThemeSays,
  ...knownCodes.flatMap((code) => statementsOf(code).map(({ means }) => means)),
  ...wasteDrums.map(({ says }) => says),
])

describe('cautions in Spanish', () => {
  it('are there, each sentence, and none for a sentence that the cards have no more', () => {
    expect([...cautions].filter((it) => !safetyLines[it])).toEqual([])
    expect(Object.keys(safetyLines).filter((it) => !cautions.has(it))).toEqual([])
  })

  it('are each found by the fingerprint of their English', () => {
    expect([...cautions].filter((it) => saidByFingerprint[fingerprint(it)] !== safetyLines[it])).toEqual([])
  })

  it('keep every figure', () => {
    const figures = (text: string): string[] => (text.match(/\d+([.,]\d+)*/g) ?? []).map((it) => it.replace(',', '.')).sort()
    expect(Object.entries(safetyLines).filter(([english, it]) => figures(english).join() !== figures(it).join())).toEqual([])
  })

  it('deny where the English denies', () => {
    // A “never” that is lost in translation is the worst that a caution can lose.
    const denies = /\b(never|no|not|nobody|nothing|none|without)\b/i
    const niega = /\b(nunca|no|ni|ning[uú]n[ao]?|nadie|nada|sin|lejos|fuera|prohibid[ao]s?|jamás|salvo|apenas)\b/i
    expect(Object.entries(safetyLines).filter(([english, it]) => denies.test(english) && !niega.test(it))).toEqual([])
  })

  it('are labelled as not checked wherever they are shown, until a competent person has', () => {
    const { safety } = translatedWords({ ...core, ...rooms }, translation)
    expect(safety.translation).toMatch(/no comprobada/)
    expect(safety.say('Never stored.')).toBe('No se almacena.')
    expect(safety.say('A sentence of a later version.')).toBe('A sentence of a later version.')
  })
})

describe('the language of a phone', () => {
  it('is the one chosen on it, else the first of its own that the product speaks, else English', () => {
    expect(chosenLanguage('es', ['en-GB'])).toBe('es')
    expect(chosenLanguage(null, ['pt-BR', 'es-MX', 'en'])).toBe('es')
    expect(chosenLanguage(null, ['de-AT'])).toBe('en')
    expect(chosenLanguage('klingon', ['es'])).toBe('es')
  })
})
