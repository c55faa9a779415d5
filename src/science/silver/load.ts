import { calculation } from '../calculation.ts'
import { gaugeField, squareMetresOfFilm } from '../film/width.ts'

export const silverLoad = calculation({
  id: 'silver.load',
  title: 'Silver brought to the fixing bath',
  inputs: {
    ...gaugeField,
    metres: { kind: 'number', unit: 'm', says: 'length of film run', atLeast: 0 },
    gramsPerSquareMetre: { kind: 'number', unit: 'g/m²', says: 'silver coated on the film', atLeast: 0, atMost: 50 },
    fractionToFixer: { kind: 'number', unit: '1', says: 'share of the silver that the fixing bath dissolves', atLeast: 0, atMost: 1 },
  },
  outputs: {
    grams: { kind: 'number', unit: 'g', says: 'silver that enters the fixing bath' },
    squareMetres: { kind: 'number', unit: 'm²', says: 'area of the film' },
  },
  formula: 'silver = true width × length × coating × share to the bath',
  source: 'mass balance; widths as in the area of film',
  domain:
    'Coated silver is 4 to 7 g/m² on negative and 2 to 4 g/m² on positive film (common practice, no source); about a fifth of it makes the image ' +
    'and the rest goes to the bath (a metallurgy text of 1965). Dense footage keeps more.',
  example: {
    inputs: { gaugeMillimetres: 35, metres: 600, gramsPerSquareMetre: 5, fractionToFixer: 0.8 },
    result: { grams: 83.94 },
    tolerance: 5e-3,
    source: 'worked by hand',
  },
  run: ({ gaugeMillimetres, metres, gramsPerSquareMetre, fractionToFixer }) => {
    const squareMetres = squareMetresOfFilm({ gaugeMillimetres, metres })
    return { grams: squareMetres * gramsPerSquareMetre * fractionToFixer, squareMetres }
  },
  steps: ({ gramsPerSquareMetre, fractionToFixer }, { grams, squareMetres }) => [
    { says: 'area of the film', formula: 'true width × length', value: squareMetres, unit: 'm²' },
    { says: 'silver coated on it', formula: 'area × coating', value: squareMetres * gramsPerSquareMetre, unit: 'g' },
    { says: 'silver that enters the fixing bath', formula: `coated silver × ${fractionToFixer}`, value: grams, unit: 'g' },
  ],
})
