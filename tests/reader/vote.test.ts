import { describe, expect, it } from 'vitest'
import { isNumber, isWord, passOf, vote, type Pass } from '../../src/reader/vote.ts'

const pass = (text: string, confidence = 0.95): Pass => passOf('band', { symbols: [...text].map((figure) => ({ text: figure, confidence })) })

describe('the vote of the passes', () => {
  it('takes what two of three read', () => {
    expect(vote([pass('7.42'), pass('742'), pass('7.42')], null)).toMatchObject({ text: '7.42', agreeing: 2 })
  })

  it('lets the geometry decide between equals, never against two', () => {
    expect(vote([pass('7.42'), pass('7.12')], '7.12')?.text).toBe('7.12')
    expect(vote([pass('7.42'), pass('7.42'), pass('7.12')], '7.12')?.text).toBe('7.42')
    expect(vote([pass('7.42'), pass('7.48')], '1.11')?.text).not.toBe('1.11')
  })

  it('knows a number from a word, an error sign or a stray point', () => {
    for (const text of ['7', '7.42', '-0.5', '.25', '007.2']) expect(isNumber(text), text).toBe(true)
    for (const text of ['', '-', '.', 'xxx', '7.', '1.2.3', '7-2', '--4', '7x']) expect(isNumber(text), text).toBe(false)
    expect(vote([pass('xxx'), pass('xx.'), pass('')], null)).toBeNull()
  })

  it('knows a word by its letters, not by a unit beside a number', () => {
    for (const text of ['x', 'xxx', '5xx0xx2', 'x8']) expect(isWord(text), text).toBe(true)
    for (const text of ['', '7.42', '7.42xx', '8..']) expect(isWord(text), text).toBe(false)
  })

  it('is as unsure as its least sure agreeing figure', () => {
    expect(vote([pass('12', 0.9), pass('12', 0.6), pass('13', 0.2)], null)?.confidence).toBe(0.6)
  })
})
