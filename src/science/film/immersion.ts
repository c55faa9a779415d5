import { calculation } from '../calculation.ts'

export const filmImmersion = calculation({
  id: 'film.immersion',
  title: 'Time of immersion',
  inputs: {
    pathMetres: { kind: 'number', unit: 'm', says: 'length of the film’s path in the liquid', above: 0 },
    metresPerMinute: { kind: 'number', unit: 'm/min', says: 'speed of the machine', above: 0 },
  },
  outputs: { seconds: { kind: 'number', unit: 's', says: 'time of a point of the film in the liquid' } },
  formula: 'time = path ÷ speed',
  source: 'definition of speed',
  domain: 'Steady speed. The path is what is wetted: it shortens when the level falls or a rack rises. Liquid that clings on the way to the next tank acts a little longer.',
  example: { inputs: { pathMetres: 180, metresPerMinute: 30 }, result: { seconds: 360 }, tolerance: 1e-9, source: 'worked by hand' },
  run: ({ pathMetres, metresPerMinute }) => ({ seconds: (pathMetres / metresPerMinute) * 60 }),
  steps: ({ pathMetres, metresPerMinute }, { seconds }) => [
    { says: 'path in the liquid', value: pathMetres, unit: 'm' },
    { says: 'speed', value: metresPerMinute, unit: 'm/min' },
    { says: 'time of immersion', formula: 'path ÷ speed × 60', value: seconds, unit: 's' },
  ],
})
