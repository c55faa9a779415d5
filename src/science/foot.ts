/** The international foot, exact since the yard and pound agreement of 1959. In a file of its own because the first screen needs nothing else of the units. */
export const metresPerFoot = 0.3048
