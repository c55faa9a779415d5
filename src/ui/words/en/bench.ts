import type { RefusalFacts } from '../../../science/refusal.ts'

const valueText = (value: unknown): string => (value === undefined ? '' : typeof value === 'string' ? value : JSON.stringify(value))

export const bench = {
  methods: 'Bench methods',
  methodsMore: 'Titrations, titrants, pH meter, hydrometer',
  mixing: 'Mixing sheets',
  mixingMore: 'A batch step by step, to its certificate',
  silver: 'Silver and washing',
  silverMore: 'Plated against brought in, the cell, the washes',
  replenish: 'Replenishment',
  replenishMore: 'Where the baths go over the coming film, and the rate',
  waste: 'Run-offs and waste',
  wasteMore: 'The drain, the drums, where everything went',
  title: 'Bench',
  meta: (count: number): string => `${count} calculations`,
  find: 'Find a calculation',
  nothingFound: { title: 'No calculation has these words', more: 'Try another word: pH, gamma, wash, silver.' },
  groups: {
    water: 'Water and heat',
    hydrometer: 'Hydrometer',
    phMeter: 'pH meter',
    acidBase: 'Acid and base',
    titration: 'Titration',
    mix: 'Mixing',
    bath: 'Bath correction and replenishment',
    film: 'Film',
    silver: 'Silver',
    wash: 'Washing',
    air: 'Air',
    develop: 'Development',
    strip: 'Strips',
    print: 'Printing',
    chart: 'Control charts',
    reading: 'Readings',
  } as Record<string, string>,
  example: 'Fill in the worked example',
  clear: 'Empty the form',
  workOut: 'Work it out',
  result: 'Result',
  working: 'Working',
  source: 'Source',
  domain: 'Where it holds',
  formula: 'Formula',
  optional: 'may stay empty',
  oneOf: 'Fill in one of these',
  addRow: 'Add a line',
  removeRow: (line: number): string => `Remove line ${line}`,
  pasteNumbers: 'Numbers, one to a line or parted by spaces',
  name: 'Name',
  choose: 'Choose',
  yes: 'Yes',
  no: 'No',
  cannotBeSaid: 'cannot be said',
  none: 'none',
  showAll: (count: number): string => `All ${count}`,
  problems: {
    empty: 'This is needed.',
    notANumber: 'This is not a number. Figures and one decimal point or comma.',
    notAChoice: 'Choose one of the list.',
    sameName: 'This name stands twice.',
  },
  refusal: ({ code, field, value, allowed }: RefusalFacts): string => {
    const given = valueText(value)
    switch (code) {
      case 'missing':
        return `${field || 'A value'} is needed: ${allowed}.`
      case 'unknownField':
        return `${field} is not a field of this calculation.`
      case 'noAnswer':
        return `No answer for ${field || 'these values'}${given ? ` (${given})` : ''}. It takes ${allowed}.`
      default:
        return `${field || 'The values'}${given ? `: ${given}` : ''}. It takes ${allowed}.`
    }
  },
  lookOver: 'Look over the marked fields.',
}
