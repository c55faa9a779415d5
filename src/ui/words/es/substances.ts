/** Names on a mixing sheet, by the key of the calculations. What is not here keeps its English name. */
const names: Readonly<Record<string, string>> = {
  sodiumSulfite: 'sulfito de sodio', potassiumSulfite: 'sulfito de potasio', sodiumBisulfite: 'bisulfito de sodio', sodiumMetabisulfite: 'metabisulfito de sodio', potassiumMetabisulfite: 'metabisulfito de potasio',
  sodiumThiosulfate: 'tiosulfato de sodio', ammoniumThiosulfate: 'tiosulfato de amonio', sodiumCarbonate: 'carbonato de sodio', potassiumCarbonate: 'carbonato de potasio', sodiumBicarbonate: 'bicarbonato de sodio',
  borax: 'bórax (tetraborato de sodio)', boricAcid: 'ácido bórico', sodiumMetaborate: 'metaborato de sodio', aceticAcid: 'ácido acético', sodiumAcetate: 'acetato de sodio', potassiumAlum: 'alumbre de potasio',
  potassiumChromeAlum: 'alumbre de cromo y potasio', sodiumHydroxide: 'hidróxido de sodio', potassiumHydroxide: 'hidróxido de potasio', sulfuricAcid: 'ácido sulfúrico', hydrochloricAcid: 'ácido clorhídrico', nitricAcid: 'ácido nítrico',
  phosphoricAcid: 'ácido fosfórico', citricAcid: 'ácido cítrico', ammonia: 'amoníaco', hydroquinone: 'hidroquinona', metol: 'metol (hemisulfato de 4-metilaminofenol)', phenidone: '1-fenil-3-pirazolidinona',
  potassiumBromide: 'bromuro de potasio', potassiumIodide: 'yoduro de potasio', potassiumIodate: 'yodato de potasio', potassiumChloride: 'cloruro de potasio', sodiumChloride: 'cloruro de sodio', sodiumSulfate: 'sulfato de sodio',
  ammoniumChloride: 'cloruro de amonio', potassiumDihydrogenPhosphate: 'dihidrogenofosfato de potasio', disodiumHydrogenPhosphate: 'hidrogenofosfato de disodio', potassiumHydrogenPhthalate: 'hidrogenoftalato de potasio',
  potassiumTetroxalate: 'tetraoxalato de potasio', silverNitrate: 'nitrato de plata', silverBromide: 'bromuro de plata',
}

export const substanceName = (key: string): string | undefined => names[key]
