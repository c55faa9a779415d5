import type { CautionCard } from './card.ts'
import { aceticAcid28, aceticAcidGlacial, acidIntoBath, sulfuricAcid } from './cards/acids.ts'
import { ammoniaSolution, borax, boricAcid, potassiumBromide, sodiumBicarbonate, sodiumCarbonate, sodiumHydroxide } from './cards/alkalis.ts'
import { developerReplenisher, fixingReplenisher, hydroquinone, metol, phenidone, weighingDevelopers, workingDeveloper } from './cards/developers.ts'
import { acidStop, ammoniumThiosulfate, chromeAlum, potassiumAlum, sodiumThiosulfate, usedFixingBath } from './cards/fixing.ts'
import { hydrogen, hydrogenSulfide, sulfurDioxide } from './cards/gases.ts'
import { darkVault, movingParts, nitrateFilm, silverCell, wetElectrical } from './cards/operations.ts'
import { potassiumDichromate, potassiumFerricyanide, potassiumPermanganate, sodiumHypochlorite } from './cards/oxidisers.ts'
import {
  carbonTetrachloride, diethylEther, ethylAcetate, filmCleaning, hydrocarbonCleaners, hydrofluoroether, isopropanol, solventTitration,
  tetrachloroethylene, trichloroethane,
} from './cards/solvents.ts'
import { metabisulfite, sodiumSulfite, sulfiteIntoAcidBath } from './cards/sulfites.ts'
import { acidifyingSamples, acidTitrants, cericSulfate, formaldehyde, iodine, mercury, silverNitrate, sodiumSulfide } from './cards/titrants.ts'

/** Every caution card, in the order of the safety menu: baths, acids and alkalis, agents and salts, bench, gases, solvents, work. */
export const cards: readonly CautionCard[] = [
  workingDeveloper, developerReplenisher, usedFixingBath, fixingReplenisher, acidStop,
  aceticAcid28, aceticAcidGlacial, sulfuricAcid, acidIntoBath,
  sodiumHydroxide, sodiumCarbonate, sodiumBicarbonate, ammoniaSolution,
  metol, hydroquinone, phenidone, weighingDevelopers,
  sodiumSulfite, sulfiteIntoAcidBath, metabisulfite, sodiumThiosulfate, ammoniumThiosulfate, borax, boricAcid, potassiumBromide, potassiumAlum, chromeAlum,
  iodine, silverNitrate, acidTitrants, cericSulfate, formaldehyde, sodiumSulfide, acidifyingSamples, solventTitration, mercury,
  sulfurDioxide, hydrogenSulfide, hydrogen,
  diethylEther, ethylAcetate, isopropanol, hydrocarbonCleaners, hydrofluoroether, tetrachloroethylene, carbonTetrachloride, trichloroethane, filmCleaning,
  sodiumHypochlorite, potassiumFerricyanide, potassiumDichromate, potassiumPermanganate,
  silverCell, nitrateFilm, darkVault, movingParts, wetElectrical,
]

const byId: ReadonlyMap<string, CautionCard> = new Map(cards.map((card) => [card.id, card]))

/** A plan may name a card that this version does not have; whoever asks must then refuse, never go on without one. */
export const cardById = (id: string): CautionCard | undefined => byId.get(id)
