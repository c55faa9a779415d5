/** Inputs that the titrations share. */

export const titrantMillilitres = { kind: 'number', unit: 'mL', says: 'titrant run in', atLeast: 0, atMost: 10_000 } as const
export const blankMillilitres = { kind: 'number', unit: 'mL', says: 'titrant that a blank takes', atLeast: 0, atMost: 1000, preset: 0 } as const
export const sampleMillilitres = { kind: 'number', unit: 'mL', says: 'bath taken', above: 0, atMost: 10_000 } as const
export const equivalentMassGramsPerEquivalent = { kind: 'number', unit: 'g/eq', says: 'molar mass over the electrons, protons or silver ions that one molecule takes', above: 0, atMost: 10_000 } as const
export const dilutionFactor = { kind: 'number', unit: '1', says: 'how many times the bath was diluted before the sample was taken', atLeast: 1, atMost: 1_000_000, preset: 1 } as const
export const normality = (says: string) => ({ kind: 'number', unit: 'eq/L', says, above: 0, atMost: 100 }) as const
