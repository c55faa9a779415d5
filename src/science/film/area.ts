import { calculation } from '../calculation.ts'
import { gaugeField, squareMetresOfFilm, trueWidthMillimetres } from './width.ts'

export const filmArea = calculation({
  id: 'film.area',
  title: 'Area of film',
  inputs: {
    ...gaugeField,
    metres: { kind: 'number', unit: 'm', says: 'length of film', atLeast: 0 },
  },
  outputs: {
    squareMetres: { kind: 'number', unit: 'm²', says: 'area of one side' },
    trueWidthMillimetres: { kind: 'number', unit: 'mm', says: 'true width of this gauge' },
  },
  formula: 'area = true width × length',
  source: 'widths: 35 mm 34.975 (SMPTE 139); 16 mm 15.95 (ISO 69), 65 mm 64.97 (ISO 3023) and 8 mm 7.975 (ISO 1700), the last three from memory',
  domain: 'One side of new film. Neither shrinkage (up to some 0.5 %) nor the perforations (about 6.5 % of 35 mm, 2 % of 16 mm film) are taken off.',
  example: {
    inputs: { gaugeMillimetres: 35, metres: 304.8 },
    result: { squareMetres: 10.66 },
    tolerance: 5e-4,
    source: '1000 ft of 35 mm film, worked by hand',
  },
  run: ({ gaugeMillimetres, metres }) => ({
    squareMetres: squareMetresOfFilm({ gaugeMillimetres, metres }),
    trueWidthMillimetres: trueWidthMillimetres(gaugeMillimetres),
  }),
  steps: ({ metres }, { squareMetres, trueWidthMillimetres: width }) => [
    { says: 'true width of this gauge', value: width, unit: 'mm' },
    { says: 'length', value: metres, unit: 'm' },
    { says: 'area of one side', formula: 'width ÷ 1000 × length', value: squareMetres, unit: 'm²' },
  ],
})
