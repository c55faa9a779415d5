import { acidLines } from './acids-alkalis.ts'
import { saltLines } from './agents-salts.ts'
import { bathLines } from './baths.ts'
import { benchLines } from './bench.ts'
import { codeLines } from './codes.ts'
import { emergencyLines } from './emergency.ts'
import { solventLines } from './gases-solvents.ts'
import { workLines } from './oxidisers-work.ts'

/**
 * Every sentence of the cautions, beside the English one that it stands for: whoever checks it has both before the eyes, and a card whose English
 * has changed since is read in English.
 */
export const safetyLines: Readonly<Record<string, string>> = { ...emergencyLines, ...bathLines, ...acidLines, ...saltLines, ...benchLines, ...solventLines, ...workLines, ...codeLines }
