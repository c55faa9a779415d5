/**
 * How far an answer may lie from the published value: absolute, in the field's own unit, set just above today's error
 * (or half of the last printed digit, where that is more). A tolerance may tighten; a loosening says why.
 * Keys are `calculation`, or `calculation @ set` for a set of cases with a precision of its own; nested fields are written
 * without indexes (`after.gramsPerLitre`), and a field of values by name may stand for all its names.
 */
export const tolerances: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  // Water, heat and density
  'water.density @ Kell': { gramsPerMillilitre: 5e-7 },
}
