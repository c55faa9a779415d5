import type { AnswerKind } from '../../../corrections/answers.ts'

export const response = {
  title: 'How this bath answers',
  link: 'How this bath answers',
  more: (least: string, most: string): string =>
    `Observed change over the change that was worked out. A dose is divided by it, within ${least} and ${most}. Old answers fade; a new lot or a new bath starts at 1.`,
  none: 'Nothing is learned yet',
  noneMore: 'It comes with the first add that was read again after mixing.',
  from: (count: number): string => (count === 0 ? 'No answer counts: worked out as the model says.' : `From ${count} ${count === 1 ? 'answer' : 'answers'} of this lot.`),
  change: (predicted: string, observed: string): string => `expected ${predicted}, came ${observed}`,
  kinds: {
    learned: 'Learned',
    tooSmall: 'Too small to tell, not learned',
    unclear: 'Not clear, not learned',
    mixedDoses: 'Something else was poured as well, not learned',
    outOfBounds: 'Out of bounds: stopped, not learned',
  } satisfies Record<AnswerKind, string>,
  stopped: (ratio: string): string => `It answered ${ratio} times what was expected. Nothing more of this lot goes in.`,
  stoppedMore: 'Check the drum and its label, the volume of the bath, and the analysis. When it is found, reset with what it was.',
  wasReset: 'Reset to 1',
  newBath: 'new bath connected',
  reset: 'Reset to 1…',
  resetTitle: (material: string): string => `Reset: ${material}`,
  resetMore: 'What was learned until now no longer counts. The reason stays in the log.',
  why: 'Why? What was found?',
  resetSave: 'Reset to 1',
}
