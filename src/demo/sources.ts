/**
 * Where the demo's starting values come from, in plain words as the screens show them. They are values of the trade to begin with, not
 * specifications: every laboratory replaces them with its own.
 */
export const commonPractice = 'common practice, no source'
export const fromMemory = 'from memory'
/** B. Pritchard and others, training text for film archives, section 9. */
export const archiveTraining = 'training text for film archives, c. 2000'
/** Printed data sheet for a black-and-white positive film, 1999. */
export const printFilmSheet = 'data sheet of a black-and-white print film, 1999'
/** H-24 module 9, 2006. A colour print process, taken as an analogue. */
export const colourPrintManual = 'manual of a colour print process, 2006, as an analogue'
/** Subcourse SS0520. */
export const armyProcessors = 'US Army course on film processors'
/** Photography (Advanced), chapter 2. */
export const navyControl = 'US Navy course on process control'
/** Photography (Basic), chapters 9 and 10. */
export const navyBasic = 'US Navy course in photography'
/** Crabtree and Hartt, Trans. SMPE XIII no. 38, 1929. */
export const fixingPaper = 'Society paper on fixing baths, 1929'
/** Lacey, in a projectionists' magazine, November 1927. */
export const spliceArticle = 'trade magazine, November 1927'
/** United States Navy, Photography (Advanced), appendix I. */
export const navySilver = 'US Navy course, silver recovery'
/** McCann, Photographic Processing Hazards. */
export const hazardsBook = 'handbook of photographic processing hazards'

export const and = (...sources: string[]): string => sources.join('; ')
