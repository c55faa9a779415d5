import { calculation } from '../calculation.ts'
import { mean } from '../chart/constants.ts'
import { tidy } from '../decimal.ts'
import { noAnswer, Refusal } from '../refusal.ts'

const least = 3 // strips of each batch; makers' instructions ask for three at least

const stripField = {
  kind: 'table',
  says: 'densities of one strip by step',
  of: { kind: 'number', unit: '1', says: 'density', atLeast: -0.1, atMost: 6 },
} as const

/**
 * Aims of a new batch of control strips from strips of both batches processed together. What the process does that day shows on the old
 * strips (their mean less their aim) and is taken off the mean of the new ones, so that the new aims stand for the same process on aim.
 */
export const stripCrossover = calculation({
  id: 'strip.crossover',
  title: 'Crossover to a new batch of strips',
  inputs: {
    oldAims: { kind: 'table', says: 'aims of the old batch by step', of: { kind: 'number', unit: '1', says: 'aim', atLeast: -0.1, atMost: 6 } },
    oldStrips: { kind: 'list', says: 'strips of the old batch, processed together with the new', atLeast: least, atMost: 20, of: stripField },
    newStrips: { kind: 'list', says: 'strips of the new batch', atLeast: least, atMost: 20, of: stripField },
  },
  outputs: {
    newAims: { kind: 'table', says: 'aims of the new batch by step', of: { kind: 'number', unit: '1', says: 'aim' } },
    processRuns: { kind: 'table', says: 'how far the process ran from its aim that day, by step', of: { kind: 'number', unit: '1', says: 'deviation' } },
    widestSpread: { kind: 'number', unit: '1', says: 'widest range of one step within one batch' },
  },
  formula: 'process runs = mean of old strips − old aim; new aim = mean of new strips − process runs',
  source: 'makers’ instructions for control strips (old and new together, three times at least); the rule for the new aim from memory',
  domain: 'Both batches in one machine on one day, read on one densitometer. Strips of one batch that differ by more than 0.05 say that the process moved meanwhile: run them again.',
  example: {
    inputs: { oldAims: { LD: 0.6 }, oldStrips: [{ LD: 0.62 }, { LD: 0.61 }, { LD: 0.63 }], newStrips: [{ LD: 0.65 }, { LD: 0.66 }, { LD: 0.64 }] },
    result: { newAims: { LD: 0.63 }, processRuns: { LD: 0.02 }, widestSpread: 0.02 },
    tolerance: 1e-9,
    source: 'worked by hand',
  },
  run: ({ oldAims, oldStrips, newStrips }) => {
    const newAims: { [step: string]: number } = {}
    const processRuns: { [step: string]: number } = {}
    let widestSpread = 0
    const steps = Object.keys(oldAims)
    for (const [name, strips] of [['oldStrips', oldStrips], ['newStrips', newStrips]] as const)
      strips.forEach((strip, index) => {
        for (const step of Object.keys(strip))
          if (!steps.includes(step)) throw new Refusal({ code: 'unknownField', field: `${name}[${index}].${step}`, value: step, allowed: `steps with an old aim: ${steps.join(', ')}` })
      })
    for (const step of steps) {
      const old = oldStrips.map((strip) => strip[step]).filter((it) => it !== undefined)
      const fresh = newStrips.map((strip) => strip[step]).filter((it) => it !== undefined)
      if (old.length < least || fresh.length < least) throw noAnswer(`oldAims.${step}`, oldAims[step], `this step read on ${least} strips or more of each batch, not on ${old.length} and ${fresh.length}`)
      const runs = tidy(mean(old) - oldAims[step]!)
      processRuns[step] = runs
      newAims[step] = tidy(mean(fresh) - runs)
      widestSpread = Math.max(widestSpread, Math.max(...old) - Math.min(...old), Math.max(...fresh) - Math.min(...fresh))
    }
    return { newAims, processRuns, widestSpread: tidy(widestSpread) }
  },
  steps: ({ oldAims }, { newAims, processRuns, widestSpread }) => [
    ...Object.keys(oldAims).flatMap((step) => [
      { says: `the process runs at ${step}`, formula: `mean of old strips − ${oldAims[step]}`, value: processRuns[step]!, unit: '1' },
      { says: `new aim of ${step}`, formula: 'mean of new strips − what the process runs', value: newAims[step]!, unit: '1' },
    ]),
    { says: 'widest range of a step within a batch', value: widestSpread, unit: '1' },
  ],
})
