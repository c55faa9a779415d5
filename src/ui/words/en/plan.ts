import type { PlanProblem, ShapeFault } from '../../../plan/plan-problems.ts'
import type { ListName } from '../../../plan/without.ts'
import { planChoices, planFields, type FieldName } from './plan-fields.ts'

const shapes: Record<ShapeFault, (bound: string) => string> = {
  missing: () => 'This is needed.',
  notANumber: () => 'This is not a number. Figures and one decimal point or comma.',
  notText: () => 'This must be words.',
  notAChoice: () => 'Choose one of the list.',
  notAnId: () => 'An id has small letters, figures and hyphens only.',
  form: () => 'It is not written as it must be.',
  atLeast: (bound) => `It must be ${bound} or more.`,
  above: (bound) => `It must be more than ${bound}.`,
  atMost: (bound) => `It must be ${bound} or less.`,
  below: (bound) => `It must be less than ${bound}.`,
  tooShort: (bound) => `At least ${bound} letters.`,
  tooLong: (bound) => `At most ${bound} letters.`,
  tooFew: (bound) => (bound === '1' ? 'At least one is needed.' : `At least ${bound} are needed.`),
  tooMany: (bound) => `At most ${bound}.`,
  unknownField: () => 'The file has a field that this app does not know',
  wrongKind: () => 'It has another shape than it must have.',
}

const inOrder = 'Out of order. It goes: hold below, action low, warning low, aim, warning high, action high, hold above.'

/** What is wrong with a field, and what would be right. */
const problem = ({ code, why, detail, bound }: PlanProblem): string => {
  switch (code) {
    case 'shape':
      return why === 'unknownField' ? `${shapes.unknownField('')}: ${detail}.` : shapes[why ?? 'wrongKind'](bound === undefined ? '' : String(bound))
    case 'repeatedId':
      return `The id ${detail} stands twice.`
    case 'unknownId':
      return `It names ${detail}, which the plan does not have. Choose another.`
    case 'limitOrder':
      return `${inOrder} Here: ${detail}.`
    case 'aimOutsideLimits':
      return `The instrument cannot show the aim, ${detail}.`
    case 'rangeOrder':
      return `The range is upside down: ${detail}.`
    case 'timeZone':
      return `There is no time zone ${detail}.`
    case 'noSupervisor':
      return 'At least one supervisor is needed: somebody must sign.'
    case 'substance':
      return detail.includes(':') ? `It has no such crystal form. ${detail}.` : `The calculations do not know ${detail || 'this substance'}, so no dose could be worked out.`
    case 'pair':
      return 'These two cannot be judged together: both must be readings of one unit, and not the same one.'
    case 'depth':
      return `With this volume and surface the liquid would stand ${detail} m deep. One of the two is not right.`
    case 'shiftTimes':
      return `Two shifts begin at ${detail}.`
    case 'cautionReplaced':
      return `The app has a card for this substance: ${detail}. Choose it, and add your own words to it.`
    case 'stockUnit':
      return `It is dosed by ${detail === 'L' ? 'volume' : 'weight'}, so it is counted in ${detail}.`
  }
}

const lists: Record<ListName, { title: string; one: string; add: string; none: string }> = {
  machines: { title: 'Machines', one: 'Machine', add: 'Add a machine', none: 'No machine yet' },
  stations: { title: 'Stations', one: 'Station', add: 'Add a station', none: 'No station yet' },
  checks: { title: 'Checks', one: 'Check', add: 'Add a check', none: 'No check here yet' },
  people: { title: 'People', one: 'Person', add: 'Add a person', none: 'Nobody yet' },
  shifts: { title: 'Shifts', one: 'Shift', add: 'Add a shift', none: 'No shift yet' },
  materials: { title: 'Materials', one: 'Material', add: 'Add a material', none: 'No material yet' },
  methods: { title: 'Methods', one: 'Method', add: 'Add a method', none: 'No method yet' },
  formulas: { title: 'Formulas', one: 'Formula', add: 'Add a formula', none: 'No formula yet' },
  cautions: { title: 'Own cautions', one: 'Caution', add: 'Add a caution', none: 'No caution of your own yet' },
}

export const plan = {
  title: 'Lab plan',
  laboratory: 'Laboratory',
  lists,
  nameOf: (field: FieldName): string => planFields[field][0],
  helpOf: (field: FieldName): string | undefined => planFields[field][1],
  choice: (field: FieldName, value: string): string => planChoices[field]?.[value] ?? value,
  checkKinds: { reading: 'a reading', look: 'a look', strip: 'a control strip' },
  checkKindsMore: { reading: 'A number with aim and limits', look: 'Right or not right', strip: 'Densities of a processed strip' },
  fresh: { machines: 'New machine', stations: 'New station', checks: 'New check', people: 'New person', shifts: 'New shift', materials: 'New material', methods: 'New method', formulas: 'New formula', cautions: 'New caution' } satisfies Record<ListName, string>,

  inForceSince: (when: string): string => `in force since ${when}`,
  startingValues: (count: number, all: number): string => `${count} of ${all} aims are starting values`,
  cautionsMore: 'A card of your own for what the app has no card of, or words of your own added to one of the app’s. It is read before an amount, like any other.',
  startingValuesMore: 'Values of the trade to begin with. Each stays labelled until the laboratory’s own takes its place.',
  startingValue: (source: string): string => `Starting value: ${source}`,
  startingShort: 'starting value',
  setBy: (who: string, when: string): string => `Set by ${who}, ${when}`,
  willBeSet: 'Will be set by you when you sign',
  whoSet: 'Who set the aim',
  takeAsOurs: 'These values are the laboratory’s own',
  lookOnly: 'Only a supervisor changes the plan. Here it can be read.',
  knownAs: (id: string): string => `In the record as ${id}`,
  counts: { stations: (count: number): string => `${count} ${count === 1 ? 'station' : 'stations'}`, checks: (count: number): string => `${count} ${count === 1 ? 'check' : 'checks'}` },

  copy: 'Copy this machine',
  copyMore: 'With its stations along the film, their checks and limits. Silver cell, instruments and rooms serve both and are not copied.',
  copyName: 'Name of the new machine',
  copyOf: (name: string): string => `${name} (copy)`,
  typical: 'Add a typical machine',
  up: (name: string): string => `Move ${name} up`,
  down: (name: string): string => `Move ${name} down`,
  order: 'Change the order',
  orderDone: 'Order is right',
  remove: (name: string): string => `Take ${name} out of the plan`,
  removeMore: 'Its readings stay in the record. Nothing changes until the plan is signed.',
  removeHold: 'Hold to take it out',
  stillOpen: {
    title: 'Something there is still open',
    refused: 'Close it, release it or stop it first. What is open there would otherwise have no place to be read again.',
    byThen: 'It must be closed, released or stopped by then. What is not stays on the Now page until somebody closes it.',
  },
  addLine: 'Add a line',
  removeLine: (line: number): string => `Remove line ${line}`,
  lineName: (line: number): string => `Line ${line}`,
  addGroup: (name: string): string => `Add: ${name.toLowerCase()}`,
  removeGroup: (name: string): string => `Remove: ${name.toLowerCase()}`,
  tableName: 'Name',
  tableValue: 'Value',
  choose: 'Choose',
  none: 'none',
  optional: 'may stay empty',
  yes: 'yes',
  no: 'no',
  problem,
  toMend: (count: number): string => (count === 1 ? '1 to mend' : `${count} to mend`),

  draft: {
    title: (count: number): string => (count === 1 ? '1 change is not in force yet' : `${count} changes are not in force yet`),
    more: 'They are kept on this phone until you sign or drop them.',
    look: 'Look over and sign',
    drop: 'Drop all changes',
    dropHold: 'Hold to drop them',
    none: 'Nothing has been changed.',
  },
  review: {
    title: 'Look over and sign',
    changes: 'What changes',
    problems: 'To mend before it can be signed',
    from: (value: string): string => `was ${value}`,
    added: 'new',
    removed: 'taken out',
    order: 'in another order',
    nothing: 'empty',
    effective: 'In force from',
    now: 'now',
    nextShift: (name: string, when: string): string => `the next shift: ${name}, ${when}`,
    hours: 'The hours of the shifts change. From the next shift on, the running one keeps its own.',
    later: 'another time',
    laterField: 'Date and time, by the laboratory’s clock',
    laterProblem: 'It must lie ahead, and not before the revision that comes next.',
    why: 'Why',
    whyHint: 'Stands beside the revision for good.',
    old: 'Old readings keep the limits by which they were judged.',
    sign: (count: number): string => (count === 1 ? 'Sign this change' : `Sign these ${count} changes`),
    signs: (who: string): string => `Signed as a revision of the plan by ${who}, with this phone’s key. It is kept here at once and goes up by itself; the server checks that a supervisor made it.`,
    stale: (who: string, when: string): string => `The plan was changed meanwhile by ${who}, ${when}`,
    staleMore: 'Take that revision in: your changes are put on top of it.',
    takeIn: 'Take it in',
    both: (places: string): string => `Changed by both, yours stands: ${places}`,
    mend: 'Mend what is marked first.',
  },
  done: {
    now: 'The new plan is in force.',
    later: (when: string): string => `The new plan is signed. It takes effect ${when}.`,
  },
  revisions: 'Revisions',
  revisionsMore: 'Each is kept, with what it changed.',
  coming: (when: string): string => `takes effect ${when}`,
  since: (when: string): string => `from ${when}`,
  by: (who: string): string => `by ${who}`,
  firstRevision: 'The first plan of this laboratory.',
  sent: 'The server has it',
  notSent: 'Waits on this phone to be sent',
  sealed: (hash: string): string => `Signed entry ${hash}`,
  saveRevision: 'Save this revision as a file',
  backTo: 'Bring this plan back',
  backToMore: 'Its values are put into your changes. You look them over and sign.',

  files: 'Files',
  exportFile: 'Save the plan as a file',
  importFile: 'Take a plan from a file',
  importMore: 'It is checked, shown with all its differences, and signed like any other change.',
  schema: 'JSON Schema of the file',
  schemaMore: 'For other programs. It comes from the server.',
  notJson: 'This file is not JSON. Nothing was changed.',
  notAPlan: 'This file is not a plan that holds. Nothing was changed.',
  same: 'The file says what the plan says already.',
  moreProblems: (count: number): string => `and ${count} more`,
  otherParts: 'What the laboratory uses',
  labels: 'Tank labels',

  propose: {
    title: 'Limits from the last readings',
    more: 'What the process does, not what the film allows: compare with the permitted spread before you take them.',
    last: 'Readings',
    all: (count: number): string => `all ${count}`,
    about: 'Centre',
    aboutMean: 'their mean',
    aboutAim: 'the aim as it is',
    tooFew: (count: number, fewest: number): string => `${count} readings are too few. At least ${fewest}.`,
    equal: 'All these readings are equal: nothing can be said.',
    few: (enough: number): string => `Fewer than ${enough}: look at them again when there are more.`,
    beyond: (count: number): string => (count === 1 ? '1 of them lies beyond: find its cause first.' : `${count} of them lie beyond: find their cause first.`),
    working: (count: number, mean: string, sigma: string): string => `${count} readings, mean ${mean}, s ${sigma} (mean moving range ÷ 1.128). Warning at 2 s, action at 3 s.`,
    take: 'Put these into the plan',
    taken: (check: string, count: number): string => `${check}: limits from the last ${count} readings`,
    loading: 'Reading the record',
    source: 'Shewhart 1931; ISO 7870-2',
    now: 'now',
    proposed: 'proposed',
  },
  first: {
    own: 'A laboratory of your own',
    ownMore: 'Guided: name, units, one machine with typical checks, people, labels, first round. Some minutes.',
    titles: { place: 'Your laboratory', units: 'Units', machine: 'Your first machine', people: 'Who works here' },
    stepsName: 'Steps',
    step: (number: number): string => `Step ${number} of 6`,
    next: 'Next',
    make: 'Make the laboratory',
    needed: 'This is needed.',
    positive: 'A number above nought is needed.',
    lacking: (bad: ReadonlySet<string>): string => (bad.has('name') ? 'It needs a name.' : bad.has('stations') ? 'Choose at least one place.' : 'A number above nought is needed.'),
    pinShort: 'A PIN of at least 4 figures.',
    unitsMore: 'As the gauges and cans of the house show them.',
    feet: 'Film in feet',
    metres: 'Film in metres',
    machineName: 'Machine 1',
    starting: 'Its aims begin as starting values',
    stationsMore: 'What it does not have is unticked. Volume and path are typical: key your own where you know them; all can be changed later.',
    operators: 'Operators',
    operatorsMore: (name: string): string => `${name} is the supervisor. Each operator chooses a PIN when first taking a phone.`,
    operator: (number: number): string => `Operator ${number}`,
    pin: (name: string): string => `PIN of ${name} on this phone`,
    notSaid: 'not filled in yet',
    ready: 'Your laboratory stands',
    replace: 'Replace them by your own in the lab plan: each says who set it and when.',
    labelsMore: 'A label at each tank opens its check and proves that someone stood there.',
    printLabels: 'See and print the labels',
    phonesMore: 'Each phone is let in once, by a code.',
    planMore: 'Limits, intervals, materials, methods, shifts: all of it is yours to change.',
    emergency: 'Fill in emergency numbers',
    startRound: (machine: string): string => `${machine} runs: start the first round`,
    roundMore: 'The round asks for what is due while the machine runs.',
  },
  passphrase: {
    title: 'Passphrase',
    more: 'A supervisor signs shifts with it. Only the server keeps it, so this needs the network.',
    field: 'New passphrase',
    set: 'Set the passphrase',
    done: 'The passphrase is set.',
    signIn: 'Sign in first',
    notYet: 'Sign the plan with this person in it first.',
  },
}
