/** Figures already keyed and the one half keyed, kept in the same text as any other reading: `0.25;-2.10;0.6`. */
export const figuresOf = (kept: string): { done: string[]; keyed: string } => {
  const parts = kept.split(';')
  return { done: parts.slice(0, -1), keyed: parts.at(-1) ?? '' }
}

export const keptFigures = (done: readonly string[], keyed: string): string => [...done, keyed].join(';')
