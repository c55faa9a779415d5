/** How a part is found, step by step, in a form that can be sent into a page. */
export type Step =
  | { by: 'role'; role: string; name?: Words | undefined; level?: number | undefined }
  | { by: 'text'; text: Words }
  | { by: 'label'; text: Words }
  | { by: 'css'; css: string; holding?: Words | undefined; has?: readonly Step[] | undefined }
  | { by: 'place'; index: number }
  | { by: 'or'; steps: readonly Step[] }

/** Words as a person reads them: whole or part of a text, whatever its spaces, or a pattern. */
export type Words = { source: string; flags: string } | { text: string; exact: boolean }

export const wordsOf = (words: string | RegExp, exact = false): Words => (typeof words === 'string' ? { text: words, exact } : { source: words.source, flags: words.flags })

/** As a person would say it in a complaint. */
export const inWords = (steps: readonly Step[]): string =>
  steps
    .map((step) => {
      switch (step.by) {
        case 'role': return `${step.role}${step.name ? ` ${said(step.name)}` : ''}${step.level ? ` of level ${step.level}` : ''}`
        case 'text': return `text ${said(step.text)}`
        case 'label': return `label ${said(step.text)}`
        case 'css': return `${step.css}${step.holding ? ` with ${said(step.holding)}` : ''}${step.has ? ` with ${inWords(step.has)}` : ''}`
        case 'place': return step.index < 0 ? 'the last' : `number ${step.index + 1}`
        case 'or': return `or ${inWords(step.steps)}`
      }
    })
    .join(', ')

const said = (words: Words): string => ('text' in words ? `“${words.text}”` : `/${words.source}/${words.flags}`)
