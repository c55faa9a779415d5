import { fingerprint } from '../../fingerprint.ts'
import { safetyLines } from './lines.ts'

/** By the fingerprint of the English sentence. The build puts this table in the place of this file (`vite.config.ts`), so that a phone does not carry every sentence twice. */
export const saidByFingerprint: Readonly<Record<string, string>> = Object.fromEntries(Object.entries(safetyLines).map(([english, spanish]) => [fingerprint(english), spanish]))
