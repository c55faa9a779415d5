import type { Machine } from '../plan/machine.ts'

/**
 * Light and open film. A phone's red pixels peak at about 610 to 630 nm, and panchromatic film sees to 650 nm and beyond (from memory): the red
 * theme spares the eyes and never the film, and the product never says otherwise.
 */
export interface DarkRule {
  light: Machine['light']
  /** No screen near open film; readings are noted and keyed later with the time at which they were noted. */
  phoneStaysDark: boolean
  says: string
  source: string
}

const rules: { readonly [L in Machine['light']]: DarkRule } = {
  panchromatic: {
    light: 'panchromatic',
    phoneStaysDark: true,
    says: 'Panchromatic stock: no light is safe, and no screen. Phone off, in a closed pouch or outside; watches too. Note now, key later.',
    source: 'Film Archives On-Line sect. 8; pouch and watch: common practice, no source',
  },
  orthochromatic: {
    light: 'orthochromatic',
    phoneStaysDark: true,
    says: 'Orthochromatic stock sees green and blue, which every screen gives off. No screen near open film. Note now, key later.',
    source: 'Film Archives On-Line sect. 8; pixels from memory',
  },
  blueSensitive: {
    light: 'blueSensitive',
    phoneStaysDark: true,
    says: 'Blue-sensitive stock bears its own safelight, at its own distance. A screen is not that light. Keep it away from open film.',
    source: 'data sheet of a positive film (2008): one safelight, 15 W, no closer than 1.2 m; a screen is not that filter',
  },
}

export const darkRuleOf = (light: Machine['light']): DarkRule => rules[light]

export const redThemeSays = 'The red screen is for your eyes. It is not safe for film.'
