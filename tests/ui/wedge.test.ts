import { describe, expect, it } from 'vitest'
import { createWedge } from '../../src/ui/labels/wedge.ts'

const origin = 'https://bath.lab.example'
const label = `${origin}/at/1/station/neg-1-fix-2`

const typed = (text: string, pause = 5) => {
  const found: string[] = []
  const wedge = createWedge(origin, (it) => found.push(it))
  let at = 1000
  const passed = [...text, 'Enter'].filter((key) => !wedge(key, (at += pause)))
  return { found, passed: passed.join('') }
}

describe('a hand scanner', () => {
  it('opens a label, and no figure of its address reaches the pad', () => {
    expect(typed(label)).toEqual({ found: [label], passed: '' })
  })

  it('leaves a reading that is keyed alone, and what is no label of ours', () => {
    expect(typed('4.92')).toEqual({ found: [], passed: '4.92Enter' })
    expect(typed('h4.92').passed).toBe('4.92Enter')
    expect(typed('https://elsewhere.example/at/1/station/x').found).toEqual([])
  })

  it('is not taken for a person who types as slowly as people do', () => {
    expect(typed(label, 900).found).toEqual([])
  })

  it('reads the next label after one that broke off', () => {
    const found: string[] = []
    const wedge = createWedge(origin, (it) => found.push(it))
    for (const [index, key] of [...'https://ba'].entries()) wedge(key, index)
    for (const [index, key] of [...label, 'Enter'].entries()) wedge(key, 5000 + index)
    expect(found).toEqual([label])
  })
})
