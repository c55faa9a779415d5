import { marks } from './en/marks.ts'
import { shell } from './en/shell.ts'

/** Every sentence that a person reads. Another language is another object of this type. */
export const en = { shell, marks }
export type Words = typeof en
