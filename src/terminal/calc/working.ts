import type { AnyCalculation, Step } from '../../science/calculation.ts'

const figures = (value: number | string): string => (typeof value === 'number' ? String(Number(value.toPrecision(6))) : value)

/** The working as a column of text: what was worked out, how, the number; then where the formula comes from. */
export const workingText = ({ title, formula, source, domain }: AnyCalculation, steps: readonly Step[]): string =>
  [
    title,
    ...steps.map(({ says, formula: how, value, unit }) => `  ${says}${how ? `   [${how}]` : ''}   ${figures(value)}${unit === undefined || unit === '1' ? '' : ` ${unit}`}`),
    `Formula: ${formula}`,
    `Source: ${source}`,
    `Holds: ${domain}`,
  ].join('\n')
