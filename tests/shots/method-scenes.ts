import type { PersonId } from '../../src/plan/ids.ts'
import { cardById } from '../../src/safety/cards.ts'
import type { Scene } from './scenes.ts'
import { past } from './strip-scenes.ts'
import type { Log } from './log.ts'

const at = Date.parse('2026-01-14T14:06:00Z')

/** Cards that the one with the phone in hand has read at a station. */
const read = (log: Log, station: string, ...cards: string[]): void => {
  for (const card of cards) {
    const it = cardById(card)!
    log.add('caution', 2, { card, version: it.version, station: station as never, lines: [...it.deadliest] }, 'ada' as PersonId)
  }
}
const bench = (station: string, ...cards: string[]) => (log: Log): void => {
  past(log)
  read(log, station, ...cards)
}

/** Silver nitrate into a developer: an S with its jump near 5.9 mL. */
const curve = [0, 1, 2, 3, 4, 5, 5.5, 5.7, 5.8, 5.9, 6, 6.1, 6.3, 6.5, 7, 8].map((millilitres) => ({ millilitres, reading: Math.round(120 + 110 * Math.tanh((millilitres - 5.9) * 3) + 6 * millilitres) }))
const draft = (step: number, ...determinations: object[]) => ({ step, timers: {}, determinations })
const plain = (keyed: Record<string, string>) => ({ keyed, points: [], endPoint: 'secondDerivative' })

export const methodScenes: Record<string, Scene> = {
  'method-list': { at, path: () => '/method', log: (log) => void past(log) },
  'method-caution': { at, path: () => '/method/neg-1-dev-hydroquinone', log: (log) => void past(log) },
  'method-step': { at, path: () => '/method/neg-1-dev-hydroquinone', log: bench('neg-1-dev', 'ethyl-acetate', 'op-solvent-extraction'), drafts: () => ({ 'method:neg-1-dev-hydroquinone': { step: 1, timers: { 1: at - 100_000 }, determinations: [plain({})] } }) },
  'method-figures': { at, path: () => '/method/neg-1-dev-hydroquinone', log: bench('neg-1-dev'), drafts: () => ({ 'method:neg-1-dev-hydroquinone': draft(4, plain({ titrantMillilitres: '6.85' }), plain({ titrantMillilitres: '6.80' })) }) },
  'method-third': { at, path: () => '/method/neg-1-dev-hydroquinone', log: bench('neg-1-dev'), drafts: () => ({ 'method:neg-1-dev-hydroquinone': draft(4, plain({ titrantMillilitres: '6.85' }), plain({ titrantMillilitres: '7.60' })) }) },
  'method-curve': { at, path: () => '/method/neg-1-dev-bromide', log: bench('neg-1-dev'), drafts: () => ({ 'method:neg-1-dev-bromide': draft(2, { keyed: {}, points: curve, endPoint: 'secondDerivative' }) }) },
  'method-calibrate': { at, path: () => '/method/ph-slope', log: (log) => void past(log) },
  'silver': { at, path: () => '/silver', log: (log) => void past(log, 6) },
  'replenish': { at, path: () => '/replenish', log: (log) => void past(log) },
  'method-from-check': { at, path: () => '/check/neg-1-dev-bromide', log: (log) => void past(log) },
}
