import { calculation } from '../calculation.ts'
import { above, below } from '../decimal.ts'
import { silverGramsPerAmpereHour } from './faraday.ts'

const sulfidingAmperesPerSquareMetre = 50 // A/m² of cathode, fair agitation; common practice, no source (range of work 10 to 50)
const leanSilverGramsPerLitre = 1 // g/L; efficiency falls and sulfide forms early below it; common practice, no source

/**
 * The current that takes silver out as fast as film brings it in, and its density on the cathode. A current beyond what the
 * dissolved silver near the cathode can feed reduces thiosulfate instead, and the cathode turns brown with silver sulfide
 * (US Navy training text): the warning marks that, as a figure to work below and no sharp edge.
 */
export const silverCurrent = calculation({
  id: 'silver.current',
  title: 'Current of the silver cell',
  inputs: {
    gramsPerHour: { kind: 'number', unit: 'g/h', says: 'silver to take out', atLeast: 0 },
    efficiencyFraction: { kind: 'number', unit: '1', says: 'share of the current that plates silver', above: 0, atMost: 1 },
    cathodeSquareMetres: { kind: 'number', unit: 'm²', says: 'wetted area of the cathode', above: 0 },
    silverGramsPerLitre: { kind: 'number', unit: 'g/L', says: 'silver in the bath', atLeast: 0, atMost: 100, optional: true },
  },
  outputs: {
    amperes: { kind: 'number', unit: 'A', says: 'cell current' },
    amperesPerSquareMetre: { kind: 'number', unit: 'A/m²', says: 'current density on the cathode' },
    sulfidingAmperesPerSquareMetre: { kind: 'number', unit: 'A/m²', says: 'current density above which silver sulfide is likely' },
    sulfidingWarning: { kind: 'flag', says: 'the current is above that figure, or the bath is too lean in silver for any but a small current' },
  },
  formula: 'current = silver per hour ÷ (4.0247 g/(A·h) × efficiency); density = current ÷ cathode area',
  source: 'Faraday’s law; F = 96485.33212 C/mol (SI 2019), M(Ag) = 107.8682 g/mol. Sulfiding figures: common practice, no source',
  domain:
    'Steady plating. 10 to 50 A/m² is usual, more with strong agitation; below about 1 g/L silver the efficiency falls and sulfide forms early ' +
    '(common practice, no source). The cathode’s colour decides: brown or black means too much current.',
  example: {
    inputs: { gramsPerHour: 83.94, efficiencyFraction: 0.9, cathodeSquareMetres: 0.5 },
    result: { amperes: 23.17, amperesPerSquareMetre: 46.35, sulfidingWarning: false },
    tolerance: 6e-3,
    source: 'worked by hand',
  },
  run: ({ gramsPerHour, efficiencyFraction, cathodeSquareMetres, silverGramsPerLitre }) => {
    const amperes = gramsPerHour / (silverGramsPerAmpereHour * efficiencyFraction)
    const amperesPerSquareMetre = amperes / cathodeSquareMetres
    const isLean = silverGramsPerLitre !== undefined && below(silverGramsPerLitre, leanSilverGramsPerLitre) && amperes > 0
    return {
      amperes,
      amperesPerSquareMetre,
      sulfidingAmperesPerSquareMetre,
      sulfidingWarning: isLean || above(amperesPerSquareMetre, sulfidingAmperesPerSquareMetre),
    }
  },
  steps: ({ gramsPerHour, efficiencyFraction, cathodeSquareMetres }, { amperes, amperesPerSquareMetre }) => [
    { says: 'silver to take out', value: gramsPerHour, unit: 'g/h' },
    {
      says: 'silver that an ampere plates in an hour',
      formula: `4.0247 × ${efficiencyFraction}`,
      value: silverGramsPerAmpereHour * efficiencyFraction,
      unit: 'g/(A·h)',
    },
    { says: 'cell current', formula: 'silver per hour ÷ silver per ampere-hour', value: amperes, unit: 'A' },
    { says: 'current density', formula: `current ÷ ${cathodeSquareMetres} m²`, value: amperesPerSquareMetre, unit: 'A/m²' },
    { says: 'silver sulfide is likely above', formula: 'common practice, no source', value: sulfidingAmperesPerSquareMetre, unit: 'A/m²' },
  ],
})
