/** Languages of the product, each by its BCP 47 tag. */
export const languages = ['en', 'es'] as const
export type Language = (typeof languages)[number]
