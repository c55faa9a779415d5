/**
 * Dissociation constants at 25 °C and ionic strength 0 (molal scale, mol/L taken as mol/kg), one row a proton lost, most acid first:
 * pK, reaction enthalpy in kJ/mol, heat capacity change in J/(mol K). An enthalpy left out is not known here: that pK is held at its 25 °C value.
 *
 * "NIST46" is NIST Standard Reference Database 46 as carried by the public PHREEQC file minteq.v4.dat (opened).
 * "Goldberg 2002" is Goldberg, Kishore, Lennen, J. Phys. Chem. Ref. Data 31, 231; from memory.
 */
export interface Dissociation {
  pK: number
  kilojoulesPerMole?: number
  joulesPerMoleKelvin?: number
}

export interface AcidFacts {
  /** The system as the working sheet names it. */
  name: string
  /** Its forms, most acid first. */
  species: readonly string[]
  /** Charge of the most acid form. */
  topCharge: number
  steps: readonly Dissociation[]
  source: string
}

/** H₂O = H⁺ + OH⁻: NIST46; heat capacity from memory. */
export const water: Dissociation = { pK: 13.997, kilojoulesPerMole: 55.81, joulesPerMoleKelvin: -224 }

export const acids = {
  acetic: {
    name: 'acetate',
    species: ['CH₃COOH', 'CH₃COO⁻'],
    topCharge: 0,
    steps: [{ pK: 4.757, kilojoulesPerMole: -0.41, joulesPerMoleKelvin: -142 }],
    source: 'NIST46; heat capacity from memory',
  },
  boric: {
    name: 'borate',
    species: ['B(OH)₃', 'B(OH)₄⁻'],
    topCharge: 0,
    steps: [{ pK: 9.236, kilojoulesPerMole: 13.8, joulesPerMoleKelvin: -240 }],
    source: 'NIST46; enthalpy and heat capacity Goldberg 2002, from memory (NIST46 gives 13.0 kJ/mol)',
  },
  carbonic: {
    name: 'carbonate',
    species: ['CO₂', 'HCO₃⁻', 'CO₃²⁻'],
    topCharge: 0,
    steps: [
      { pK: 6.352, kilojoulesPerMole: 9.15, joulesPerMoleKelvin: -371 },
      { pK: 10.329, kilojoulesPerMole: 14.7, joulesPerMoleKelvin: -249 },
    ],
    source: 'NIST46; enthalpies and heat capacities Goldberg 2002, from memory',
  },
  sulfurous: {
    name: 'sulfite',
    species: ['SO₂', 'HSO₃⁻', 'SO₃²⁻'],
    topCharge: 0,
    steps: [
      { pK: 1.857, kilojoulesPerMole: -17.8, joulesPerMoleKelvin: -272 },
      { pK: 7.172, kilojoulesPerMole: -3.65, joulesPerMoleKelvin: -262 },
    ],
    source: 'Goldberg 2002, from memory (another public database gives pK₂ 7.205 with the opposite trend in temperature)',
  },
  phosphoric: {
    name: 'phosphate',
    species: ['H₃PO₄', 'H₂PO₄⁻', 'HPO₄²⁻', 'PO₄³⁻'],
    topCharge: 0,
    steps: [
      { pK: 2.148, kilojoulesPerMole: -8.0, joulesPerMoleKelvin: -141 },
      { pK: 7.198, kilojoulesPerMole: 3.6, joulesPerMoleKelvin: -230 },
      { pK: 12.375, kilojoulesPerMole: 16.0, joulesPerMoleKelvin: -242 },
    ],
    source: 'NIST46; enthalpies and heat capacities Goldberg 2002, from memory',
  },
  citric: {
    name: 'citrate',
    species: ['H₃Cit', 'H₂Cit⁻', 'HCit²⁻', 'Cit³⁻'],
    topCharge: 0,
    steps: [
      { pK: 3.128, kilojoulesPerMole: 4.06, joulesPerMoleKelvin: -131 },
      { pK: 4.761, kilojoulesPerMole: 2.05, joulesPerMoleKelvin: -178 },
      { pK: 6.396, kilojoulesPerMole: -3.35, joulesPerMoleKelvin: -254 },
    ],
    source: 'NIST46; heat capacities Goldberg 2002, from memory',
  },
  hydroquinone: {
    name: 'hydroquinone',
    species: ['H₂Q', 'HQ⁻', 'Q²⁻'],
    topCharge: 0,
    steps: [{ pK: 9.85 }, { pK: 11.4 }],
    source: 'Baxendale and Hardy 1953, Trans. Faraday Soc. 49, 1140, from memory; no enthalpy (if it behaves as phenol does, pK falls by about 0.013 per kelvin)',
  },
  metol: {
    name: 'metol',
    species: ['MH₂⁺', 'MH', 'M⁻'],
    topCharge: 1,
    steps: [{ pK: 5.9 }, { pK: 10.4 }],
    source: 'assumed, from memory: not found published; no enthalpy',
  },
  pyrazolidinone: {
    name: '1-phenyl-3-pyrazolidinone',
    species: ['PH', 'P⁻'],
    topCharge: 0,
    steps: [{ pK: 9.3 }],
    source: 'from memory, no enthalpy',
  },
  aluminium: {
    name: 'aluminium',
    species: ['Al³⁺', 'AlOH²⁺', 'Al(OH)₂⁺', 'Al(OH)₃', 'Al(OH)₄⁻'],
    topCharge: 3,
    steps: [{ pK: 4.997, kilojoulesPerMole: 47.8 }, { pK: 5.097 }, { pK: 6.697 }, { pK: 5.897 }],
    source: 'NIST46 (cumulative 4.997, 10.094, 16.791, 22.688)',
  },
  sulfate: {
    name: 'sulfate',
    species: ['HSO₄⁻', 'SO₄²⁻'],
    topCharge: -1,
    steps: [{ pK: 1.99, kilojoulesPerMole: -22, joulesPerMoleKelvin: -258 }],
    source: 'NIST46; heat capacity from memory',
  },
  ammonium: {
    name: 'ammonia',
    species: ['NH₄⁺', 'NH₃'],
    topCharge: 1,
    steps: [{ pK: 9.244, kilojoulesPerMole: 52, joulesPerMoleKelvin: 8 }],
    source: 'NIST46; heat capacity from memory',
  },
  phthalic: {
    name: 'phthalate',
    species: ['H₂Ph', 'HPh⁻', 'Ph²⁻'],
    topCharge: 0,
    steps: [
      { pK: 2.95, kilojoulesPerMole: -2.7, joulesPerMoleKelvin: -91 },
      { pK: 5.408, kilojoulesPerMole: -2.17, joulesPerMoleKelvin: -295 },
    ],
    source: 'Goldberg 2002, from memory',
  },
  oxalic: {
    name: 'oxalate',
    species: ['H₂Ox', 'HOx⁻', 'Ox²⁻'],
    topCharge: 0,
    steps: [
      { pK: 1.27, kilojoulesPerMole: -3.9, joulesPerMoleKelvin: -231 },
      { pK: 4.266, kilojoulesPerMole: 7.0, joulesPerMoleKelvin: -231 },
    ],
    source: 'Goldberg 2002, from memory',
  },
} as const satisfies Readonly<Record<string, AcidFacts>>

export type AcidSystem = keyof typeof acids

/**
 * n B(OH)₃ = polymer⁻ + H⁺ (+ water): B₂O(OH)₅⁻ and B₃O₃(OH)₄⁻, NIST46. Both carry one negative charge.
 */
export const borates: readonly (Dissociation & { borons: number; species: string })[] = [
  { borons: 2, species: 'B₂O(OH)₅⁻', pK: 9.306, kilojoulesPerMole: 8.4 },
  { borons: 3, species: 'B₃O₃(OH)₄⁻', pK: 7.306, kilojoulesPerMole: 29.4 },
]
