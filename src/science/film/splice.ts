import { calculation } from '../calculation.ts'

export const filmSplice = calculation({
  id: 'film.splice',
  title: 'Time to make a splice',
  inputs: {
    storedMetres: { kind: 'number', unit: 'm', says: 'film that the feed elevator gives while its end is held', above: 0 },
    metresPerMinute: { kind: 'number', unit: 'm/min', says: 'speed of the machine', above: 0 },
  },
  outputs: { seconds: { kind: 'number', unit: 's', says: 'time until the elevator is empty' } },
  formula: 'time = stored film ÷ speed',
  source: 'definition of speed',
  domain: 'Steady speed, elevator full at the start, nothing fed while the splice is made.',
  example: { inputs: { storedMetres: 30, metresPerMinute: 45 }, result: { seconds: 40 }, tolerance: 1e-9, source: 'worked by hand' },
  run: ({ storedMetres, metresPerMinute }) => ({ seconds: (storedMetres / metresPerMinute) * 60 }),
  steps: ({ storedMetres, metresPerMinute }, { seconds }) => [
    { says: 'film stored in the elevator', value: storedMetres, unit: 'm' },
    { says: 'speed', value: metresPerMinute, unit: 'm/min' },
    { says: 'time until it is empty', formula: 'stored ÷ speed × 60', value: seconds, unit: 's' },
  ],
})
