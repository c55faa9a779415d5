import type { AcidSystem } from './acidBase/constants.ts'

export type Form = 'anhydrous' | 'monohydrate' | 'dihydrate' | 'pentahydrate' | 'heptahydrate' | 'decahydrate' | 'dodecahydrate'

export interface SubstanceFacts {
  /** Generic chemical name, as it stands on a mixing sheet. */
  name: string
  /** Of the anhydrous form, as `molarMassOf` reads it. */
  formula: string
  forms: readonly Form[]
  /** Mol of each acid–base system and of spectator ions that one mol brings; left out where it is not known. */
  brings?: Partial<Record<AcidSystem | 'univalentCation' | 'univalentAnion' | 'divalentAnion', number>>
  /** How it acts as a reagent: the size of a first portion and the cautions follow from it. */
  nature: 'acid' | 'strongAcid' | 'acidSalt' | 'hydroxide' | 'mild'
  /** Sold as a solution or a liquid: never weighed out as a solid reagent. */
  liquid?: true
}

const dry = ['anhydrous'] as const

/**
 * Every substance that formulas, baths and reagents name. Protons are not listed: they follow from the charge balance
 * (a mol of sodium bisulfite is a mol of sodium ion and a mol of the sulfurous system).
 */
export const substances = {
  sodiumSulfite: { name: 'sodium sulfite', formula: 'Na2SO3', forms: ['anhydrous', 'heptahydrate'], brings: { univalentCation: 2, sulfurous: 1 }, nature: 'mild' },
  potassiumSulfite: { name: 'potassium sulfite', formula: 'K2SO3', forms: dry, brings: { univalentCation: 2, sulfurous: 1 }, nature: 'mild' },
  sodiumBisulfite: { name: 'sodium bisulfite', formula: 'NaHSO3', forms: dry, brings: { univalentCation: 1, sulfurous: 1 }, nature: 'acidSalt' },
  sodiumMetabisulfite: { name: 'sodium metabisulfite', formula: 'Na2S2O5', forms: dry, brings: { univalentCation: 2, sulfurous: 2 }, nature: 'acidSalt' },
  potassiumMetabisulfite: { name: 'potassium metabisulfite', formula: 'K2S2O5', forms: dry, brings: { univalentCation: 2, sulfurous: 2 }, nature: 'acidSalt' },
  sodiumThiosulfate: { name: 'sodium thiosulfate', formula: 'Na2S2O3', forms: ['anhydrous', 'pentahydrate'], brings: { univalentCation: 2, divalentAnion: 1 }, nature: 'mild' },
  ammoniumThiosulfate: { name: 'ammonium thiosulfate', formula: '(NH4)2S2O3', forms: dry, brings: { ammonium: 2, divalentAnion: 1 }, nature: 'mild' },
  sodiumCarbonate: { name: 'sodium carbonate', formula: 'Na2CO3', forms: ['anhydrous', 'monohydrate', 'decahydrate'], brings: { univalentCation: 2, carbonic: 1 }, nature: 'mild' },
  potassiumCarbonate: { name: 'potassium carbonate', formula: 'K2CO3', forms: dry, brings: { univalentCation: 2, carbonic: 1 }, nature: 'mild' },
  sodiumBicarbonate: { name: 'sodium bicarbonate', formula: 'NaHCO3', forms: dry, brings: { univalentCation: 1, carbonic: 1 }, nature: 'mild' },
  borax: { name: 'borax (sodium tetraborate)', formula: 'Na2B4O7', forms: ['anhydrous', 'pentahydrate', 'decahydrate'], brings: { univalentCation: 2, boric: 4 }, nature: 'mild' },
  boricAcid: { name: 'boric acid', formula: 'H3BO3', forms: dry, brings: { boric: 1 }, nature: 'mild' },
  sodiumMetaborate: { name: 'sodium metaborate', formula: 'NaBO2', forms: ['anhydrous', 'dihydrate'], brings: { univalentCation: 1, boric: 1 }, nature: 'mild' },
  aceticAcid: { name: 'acetic acid', formula: 'C2H4O2', forms: dry, brings: { acetic: 1 }, nature: 'acid' },
  sodiumAcetate: { name: 'sodium acetate', formula: 'C2H3O2Na', forms: dry, brings: { univalentCation: 1, acetic: 1 }, nature: 'mild' },
  potassiumAlum: { name: 'potassium alum', formula: 'KAl(SO4)2', forms: ['anhydrous', 'dodecahydrate'], brings: { univalentCation: 1, aluminium: 1, sulfate: 2 }, nature: 'acidSalt' },
  // Chromium(III) hydrolyses over days and polymerises; no constants are given for it here.
  potassiumChromeAlum: { name: 'potassium chrome alum', formula: 'KCr(SO4)2', forms: ['anhydrous', 'dodecahydrate'], nature: 'acidSalt' },
  sodiumHydroxide: { name: 'sodium hydroxide', formula: 'NaOH', forms: dry, brings: { univalentCation: 1 }, nature: 'hydroxide' },
  potassiumHydroxide: { name: 'potassium hydroxide', formula: 'KOH', forms: dry, brings: { univalentCation: 1 }, nature: 'hydroxide' },
  sulfuricAcid: { name: 'sulfuric acid', formula: 'H2SO4', forms: dry, brings: { sulfate: 1 }, nature: 'strongAcid', liquid: true },
  hydrochloricAcid: { name: 'hydrochloric acid', formula: 'HCl', forms: dry, brings: { univalentAnion: 1 }, nature: 'strongAcid', liquid: true },
  nitricAcid: { name: 'nitric acid', formula: 'HNO3', forms: dry, brings: { univalentAnion: 1 }, nature: 'strongAcid', liquid: true },
  phosphoricAcid: { name: 'phosphoric acid', formula: 'H3PO4', forms: dry, brings: { phosphoric: 1 }, nature: 'acid', liquid: true },
  citricAcid: { name: 'citric acid', formula: 'C6H8O7', forms: ['anhydrous', 'monohydrate'], brings: { citric: 1 }, nature: 'acid' },
  ammonia: { name: 'ammonia', formula: 'NH3', forms: dry, brings: { ammonium: 1 }, nature: 'hydroxide', liquid: true },
  hydroquinone: { name: 'hydroquinone', formula: 'C6H6O2', forms: dry, brings: { hydroquinone: 1 }, nature: 'mild' },
  // One mol is one mol of the amine with half a sulfate (172.19 g), not the double formula of 344.38 g.
  metol: { name: 'metol (4-methylaminophenol hemisulfate)', formula: 'C7H10NO3S0.5', forms: dry, brings: { metol: 1, sulfate: 0.5 }, nature: 'mild' },
  phenidone: { name: '1-phenyl-3-pyrazolidinone', formula: 'C9H10N2O', forms: dry, brings: { pyrazolidinone: 1 }, nature: 'mild' },
  potassiumBromide: { name: 'potassium bromide', formula: 'KBr', forms: dry, brings: { univalentCation: 1, univalentAnion: 1 }, nature: 'mild' },
  potassiumIodide: { name: 'potassium iodide', formula: 'KI', forms: dry, brings: { univalentCation: 1, univalentAnion: 1 }, nature: 'mild' },
  potassiumIodate: { name: 'potassium iodate', formula: 'KIO3', forms: dry, brings: { univalentCation: 1, univalentAnion: 1 }, nature: 'mild' },
  potassiumChloride: { name: 'potassium chloride', formula: 'KCl', forms: dry, brings: { univalentCation: 1, univalentAnion: 1 }, nature: 'mild' },
  sodiumChloride: { name: 'sodium chloride', formula: 'NaCl', forms: dry, brings: { univalentCation: 1, univalentAnion: 1 }, nature: 'mild' },
  sodiumSulfate: { name: 'sodium sulfate', formula: 'Na2SO4', forms: ['anhydrous', 'decahydrate'], brings: { univalentCation: 2, sulfate: 1 }, nature: 'mild' },
  ammoniumChloride: { name: 'ammonium chloride', formula: 'NH4Cl', forms: dry, brings: { ammonium: 1, univalentAnion: 1 }, nature: 'mild' },
  potassiumDihydrogenPhosphate: { name: 'potassium dihydrogen phosphate', formula: 'KH2PO4', forms: dry, brings: { univalentCation: 1, phosphoric: 1 }, nature: 'mild' },
  disodiumHydrogenPhosphate: { name: 'disodium hydrogen phosphate', formula: 'Na2HPO4', forms: ['anhydrous', 'heptahydrate', 'dodecahydrate'], brings: { univalentCation: 2, phosphoric: 1 }, nature: 'mild' },
  potassiumHydrogenPhthalate: { name: 'potassium hydrogen phthalate', formula: 'KHC8H4O4', forms: dry, brings: { univalentCation: 1, phthalic: 1 }, nature: 'mild' },
  potassiumTetroxalate: { name: 'potassium tetroxalate', formula: 'KH3(C2O4)2', forms: ['anhydrous', 'dihydrate'], brings: { univalentCation: 1, oxalic: 2 }, nature: 'acidSalt' },
  silverNitrate: { name: 'silver nitrate', formula: 'AgNO3', forms: dry, nature: 'mild' },
  silverBromide: { name: 'silver bromide', formula: 'AgBr', forms: dry, nature: 'mild' },
} as const satisfies Readonly<Record<string, SubstanceFacts>>
