import { formKeys, substanceKeys } from '../substances.ts'

export const substance = { kind: 'choice', of: substanceKeys, says: 'substance' } as const
export const form = (says: string) => ({ kind: 'choice', of: formKeys, says }) as const
