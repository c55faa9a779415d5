import { calculation } from '../calculation.ts'
import { same, tidy } from '../decimal.ts'

/**
 * Printer lights that change a print's density: lights = ΔD ÷ (γ × log exposure of one light).
 *
 * One light (printer point) is 0.025 log exposure, so 12 are 0.30 and not quite the 0.30103 of a stop (an encyclopedia and a
 * trade paper of 2010). The print is taken to stand on the straight part of its curve; in toe or shoulder the same lights
 * move the density less.
 */
export const printLights = calculation({
  id: 'print.lights',
  title: 'Printer lights for a density',
  inputs: {
    densityDifference: { kind: 'number', unit: '1', says: 'density wanted minus density found, in the print', atLeast: -4, atMost: 4 },
    gamma: { kind: 'number', unit: '1', says: 'gamma of the print stock', above: 0, atMost: 10 },
    logExposurePerLight: { kind: 'number', unit: '1', says: 'log exposure of one light', above: 0, atMost: 1, preset: 0.025 },
  },
  outputs: {
    lights: { kind: 'number', unit: '1', says: 'lights to add; positive is more exposure and a darker print' },
    exposureFactor: { kind: 'number', unit: '1', says: 'by which the exposure is multiplied' },
    choices: {
      kind: 'list',
      says: 'the whole lights on either side',
      of: {
        kind: 'group',
        says: 'one choice',
        fields: {
          lights: { kind: 'number', unit: '1', says: 'whole lights', whole: true },
          densityLeft: { kind: 'number', unit: '1', says: 'how much too dense the print then still is (negative: too thin)' },
        },
      },
    },
  },
  formula: 'lights = ΔD ÷ (γ × log exposure of one light); exposure factor = 10^(lights × log exposure of one light)',
  source: 'definition of gamma; 0.025 log exposure a light: encyclopedia entry “Printer point”, Swinson 2010',
  domain: 'Straight part of the print’s curve, on stock that darkens with exposure. Gamma of the print stock, not of the negative; for a change in the negative’s density take 1.',
  example: {
    inputs: { densityDifference: -0.15, gamma: 2.4 },
    result: { lights: -2.5, choices: [{ lights: -3, densityLeft: -0.03 }, { lights: -2, densityLeft: 0.03 }] },
    tolerance: 1e-9,
    source: 'worked by hand',
  },
  run: ({ densityDifference, gamma, logExposurePerLight }) => {
    const densityPerLight = gamma * logExposurePerLight
    const lights = tidy(densityDifference / densityPerLight)
    const nearest = Math.round(lights)
    const whole = same(lights, nearest) ? [nearest] : [Math.floor(lights), Math.ceil(lights)]
    return {
      lights,
      exposureFactor: 10 ** (lights * logExposurePerLight),
      // Adding 0 turns a −0 into 0.
      choices: whole.map((each) => ({ lights: each + 0, densityLeft: tidy(each * densityPerLight - densityDifference) + 0 })),
    }
  },
  steps: ({ densityDifference, gamma, logExposurePerLight }, { lights, exposureFactor, choices }) => [
    { says: 'density that one light moves', formula: `${gamma} × ${logExposurePerLight}`, value: gamma * logExposurePerLight, unit: '1' },
    { says: 'lights', formula: `${densityDifference} ÷ density of one light`, value: lights, unit: '1' },
    { says: 'exposure is multiplied by', formula: '10^(lights × log exposure of one light)', value: exposureFactor, unit: '1' },
    ...choices.map((choice) => ({ says: `left over at ${choice.lights} lights (positive: still too dense)`, value: choice.densityLeft, unit: '1' })),
  ],
})
