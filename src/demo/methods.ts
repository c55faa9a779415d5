import type { WrittenPlan } from './kit.ts'

type WrittenMethod = WrittenPlan['methods'][number]

/**
 * Determinations as they are worked at the bench. Equivalent masses follow from the molar masses: sulfite 126.04 ÷ 2 (iodine takes two
 * electrons), thiosulfate crystals 248.18 ÷ 1, bromide 119.00 ÷ 1, hydroquinone 110.11 ÷ 2, borax crystals 381.36 ÷ 2, carbonate to
 * bicarbonate and on to carbonic acid 105.99 ÷ 2, metol 344.38 ÷ 4 (two of the base in the sulfate, two electrons each), acetic acid 60.05 ÷ 1;
 * iodate 214.00 ÷ 6, sodium chloride 58.44 ÷ 1, sodium oxalate 134.00 ÷ 2. Sample sizes,
 * steps and repeatability limits are from memory.
 */
const titrations: readonly WrittenMethod[] = [
  {
    id: 'sulfite', name: 'Sulfite by iodine', caution: 'iodine', calculation: 'titration.backConcentration', repeatabilityLimit: 1,
    given: { excessMillilitres: 50, sampleMillilitres: 5, equivalentMassGramsPerEquivalent: 63.02 }, titrants: { excessNormality: 'iodine-strength', backNormality: 'thiosulfate-strength' },
    asks: { backMillilitres: 'Thiosulfate run in' },
    steps: [
      { says: 'Fume hood on. 50.0 mL of 0.1 N iodine into a flask, then 5 mL of acetic acid 28 %.', caution: 'acetic-acid-28' },
      { says: 'Run in 5.00 mL of the bath, tip under the surface: the sample into iodine, never iodine into an acid sample.', seconds: 30 },
      { says: 'Titrate back with 0.1 N thiosulfate, starch at straw yellow, to colourless.' },
    ],
  },
  {
    id: 'sulfite-fixing', name: 'Sulfite beside thiosulfate', caution: 'iodine', calculation: 'titration.concentration', repeatabilityLimit: 0.8,
    given: { sampleMillilitres: 1, equivalentMassGramsPerEquivalent: 63.02 }, titrants: { normality: 'iodine-strength' },
    asks: { titrantMillilitres: 'Iodine, first flask', blankMillilitres: 'Iodine, second flask' },
    steps: [
      { says: 'Fume hood on: acid frees sulfur dioxide. Two flasks, each 100 mL of water and 10 mL of acetic acid 28 %.', caution: 'op-acidify-sample' },
      { says: 'First flask: 1.00 mL of the bath under the surface, starch, titrate at once with 0.1 N iodine to the first blue that stays.' },
      { says: 'Second flask: 1.00 mL of the bath, 5 mL of formaldehyde solution, which binds the sulfite; wait.', seconds: 120, caution: 'formaldehyde' },
      { says: 'Starch, iodine to the first blue: the thiosulfate alone. The difference is the sulfite.' },
    ],
  },
  {
    id: 'thiosulfate', name: 'Thiosulfate by iodine', caution: 'iodine', calculation: 'titration.concentration', repeatabilityLimit: 4,
    given: { sampleMillilitres: 1, equivalentMassGramsPerEquivalent: 248.18 }, titrants: { normality: 'iodine-strength' },
    steps: [
      { says: '1.00 mL of the bath into 100 mL of water; 5 mL of formaldehyde solution to bind the sulfite; wait.', seconds: 120, caution: 'formaldehyde' },
      { says: 'Acidify with 10 mL of acetic acid 28 %, add starch.' },
      { says: 'Titrate with 0.1 N iodine to the first blue that stays.' },
    ],
  },
  {
    id: 'bromide', name: 'Bromide by silver nitrate', caution: 'silver-nitrate', calculation: 'titration.concentration', endPoint: 'curve', repeatabilityLimit: 0.03,
    given: { sampleMillilitres: 50, equivalentMassGramsPerEquivalent: 119 }, titrants: { normality: 'silver-nitrate-strength' },
    steps: [
      { says: '50.0 mL of the bath, 10 mL of dilute sulfuric acid. Fume hood on: acid frees sulfur dioxide from the sample. Boil it off and cool.', seconds: 600, caution: 'op-acidify-sample' },
      { says: 'Silver electrode in, stirrer on. Titrate with 0.1 N silver nitrate, by 0.1 mL about the jump and past it. Key volume and millivolts.' },
    ],
  },
  {
    id: 'hydroquinone', name: 'Hydroquinone by extraction', caution: 'ethyl-acetate', calculation: 'titration.concentration', repeatabilityLimit: 0.08,
    given: { sampleMillilitres: 25, equivalentMassGramsPerEquivalent: 55.06 }, titrants: { normality: 'ceric-strength' }, asks: { titrantMillilitres: 'Ceric sulfate to the first jump' },
    steps: [
      { says: 'This phone stays outside the room: note on paper, key later. No flame; fume hood on.', caution: 'op-solvent-extraction' },
      { says: '25.0 mL of the bath to pH 8.5; extract twice with 25 mL of ethyl acetate, venting after every shake; let it part.', seconds: 300 },
      { says: 'Wash the extract once with 5 mL of saturated salt water. Take it up in 50 mL of dilute sulfuric acid; never evaporate to dryness.', caution: 'acid-titrants' },
      { says: 'Titrate with 0.1 N ceric sulfate to the first jump.', caution: 'ceric-sulfate' },
    ],
  },
  {
    id: 'metol', name: 'Metol by extraction', caution: 'ethyl-acetate', calculation: 'titration.concentration', repeatabilityLimit: 0.08,
    given: { sampleMillilitres: 25, equivalentMassGramsPerEquivalent: 86.1 }, titrants: { normality: 'ceric-strength' },
    asks: { titrantMillilitres: 'Ceric sulfate to the second jump', blankMillilitres: 'Ceric sulfate to the first jump: hydroquinone' },
    steps: [
      { says: 'This phone stays outside the room: note on paper, key later. No flame; fume hood on.', caution: 'op-solvent-extraction' },
      { says: 'The extract of the hydroquinone titration goes on; or extract anew as there.', seconds: 300 },
      { says: 'Titrate on with 0.1 N ceric sulfate to the second jump. Metol is what lies between the two.', caution: 'ceric-sulfate' },
    ],
  },
  {
    id: 'borax', name: 'Borax by acid', caution: 'acid-titrants', calculation: 'titration.concentration', repeatabilityLimit: 0.15,
    given: { normality: 0.1, sampleMillilitres: 10, equivalentMassGramsPerEquivalent: 190.68 }, asks: { titrantMillilitres: 'Acid to pH 5.4', blankMillilitres: 'Acid that the sulfite takes' },
    steps: [
      { says: '10.0 mL of the bath and 50 mL of water. Fume hood on: acid frees sulfur dioxide.', caution: 'op-acidify-sample' },
      { says: 'Titrate with 0.1 N hydrochloric acid to pH 5.4 on the meter.' },
    ],
  },
  {
    id: 'carbonate', name: 'Carbonate by acid', caution: 'acid-titrants', calculation: 'titration.concentration', repeatabilityLimit: 0.5,
    given: { normality: 0.5, sampleMillilitres: 10, equivalentMassGramsPerEquivalent: 53 }, asks: { titrantMillilitres: 'Acid to pH 4.3', blankMillilitres: 'Acid that the sulfite takes' },
    steps: [
      { says: '10.0 mL of the bath and 50 mL of water. Fume hood on: acid frees sulfur dioxide.', caution: 'op-acidify-sample' },
      { says: 'Titrate with 0.5 N hydrochloric acid to pH 4.3 on the meter.' },
    ],
  },
  {
    id: 'free-acid', name: 'Free acid', caution: 'sodium-hydroxide', calculation: 'titration.concentration', endPoint: 'curve', repeatabilityLimit: 0.5,
    given: { normality: 0.1, sampleMillilitres: 10, equivalentMassGramsPerEquivalent: 60.05 },
    steps: [
      { says: '10.0 mL of the bath and 50 mL of water, glass electrode in, stirrer on.' },
      { says: 'Titrate with 0.1 N sodium hydroxide past the jump near pH 8; key volume and pH. Alum counts in part.' },
    ],
  },
]

const standards: readonly WrittenMethod[] = [
  {
    id: 'iodine-standard', name: 'Iodine against thiosulfate', caution: 'iodine', calculation: 'titration.concentration', repeatabilityLimit: 0.0003,
    // One equivalent weighs 1000 mg for the asking: g/L then reads as eq/L.
    given: { equivalentMassGramsPerEquivalent: 1, sampleMillilitres: 25 }, titrants: { normality: 'thiosulfate-strength' },
    steps: [{ says: '25.00 mL of the iodine; titrate with 0.1 N thiosulfate, starch at straw yellow, to colourless.' }],
  },
  {
    id: 'thiosulfate-standard', name: 'Thiosulfate against iodate', caution: 'acid-titrants', calculation: 'titration.standardise', repeatabilityLimit: 0.0003,
    given: { equivalentMassGramsPerEquivalent: 35.667 }, asks: { primaryStandardGrams: 'Iodate weighed in' },
    steps: [
      { says: '0.12 g of dried iodate to 0.1 mg, 50 mL of water, 2 g of potassium iodide, 10 mL of dilute sulfuric acid.' },
      { says: 'Titrate at once, starch at straw yellow, to colourless.' },
    ],
  },
  {
    id: 'silver-nitrate-standard', name: 'Silver nitrate against salt', caution: 'silver-nitrate', calculation: 'titration.standardise', endPoint: 'curve', repeatabilityLimit: 0.0003,
    given: { equivalentMassGramsPerEquivalent: 58.44 }, asks: { primaryStandardGrams: 'Salt weighed in' },
    steps: [{ says: '0.1 g of dried sodium chloride to 0.1 mg, 50 mL of water, a little nitric acid. Titrate past the jump.' }],
  },
  {
    id: 'ceric-standard', name: 'Ceric sulfate against oxalate', caution: 'ceric-sulfate', calculation: 'titration.standardise', repeatabilityLimit: 0.0003,
    given: { equivalentMassGramsPerEquivalent: 67 }, asks: { primaryStandardGrams: 'Oxalate weighed in' },
    steps: [{ says: '0.2 g of dried sodium oxalate to 0.1 mg, 100 mL of dilute sulfuric acid at 60 °C. Titrate until ferroin turns.', caution: 'acid-titrants' }],
  },
]

const others: readonly WrittenMethod[] = [
  {
    id: 'ph-calibration', name: 'pH meter on its buffers', calculation: 'phMeter.calibrate',
    steps: [
      { says: 'Two fresh buffers on both sides of the bath, at its temperature; a third proves the line.' },
      { says: 'Each buffer until the voltage moves less than 0.5 mV in 15 s.', seconds: 90 },
    ],
  },
  {
    id: 'hydrometer', name: 'Hydrometer with its temperature', calculation: 'hydrometer.correct', given: { calibratedAtCelsius: 20 }, asks: { reading: 'Read at the foot of the meniscus', readAtCelsius: 'Temperature of the sample' },
    steps: [{ says: 'Sample into a dry cylinder; let bubbles rise. Hydrometer in, free of the wall.', seconds: 120 }],
  },
  {
    id: 'residual-thiosulfate', name: 'Residual thiosulfate', calculation: 'wash.residual', given: { areaSquareCentimetres: 10 }, repeatabilityLimit: 0.2,
    asks: { absorbance: 'Absorbance of the sample', blankAbsorbance: 'Absorbance of the blank', microgramsPerAbsorbance: 'Micrograms for 1, by today’s standards' },
    steps: [
      { says: '10 cm² of clear film, not older than 14 days, into the vessel.' },
      { says: 'Borohydride, acid, amine and iron: methylene blue. Fume hood on: traces of hydrogen sulfide.', seconds: 600, caution: 'hydrogen-sulfide' },
      { says: 'Absorbance near 665 nm against water, the standards of the day beside it.' },
    ],
  },
  {
    id: 'silver-strip', name: 'Silver by test paper', asks: { value: 'Silver by the colour scale' },
    steps: [
      { says: 'Test paper into the bath for a second, shake off.' },
      { says: 'Wait, then hold it against the scale in white light. Between two colours: the middle.', seconds: 30 },
    ],
  },
]

/** What only a laboratory knows of its cell, its washes and its film; invented, in the range of common practice. Coating by stock, consumption as the film's own. */
const figures: readonly WrittenMethod[] = [
  {
    id: 'silver-data', name: 'Silver cell', calculation: 'silver.plate', steps: [],
    given: { negativeGramsPerSquareMetre: 5, positiveGramsPerSquareMetre: 3, fractionToFixer: 0.8, efficiencyFraction: 0.85, cathodeSquareMetres: 4.8 },
  },
  { id: 'wash-data', name: 'Washes', calculation: 'wash.cascade', steps: [], given: { stages: 3, carryLitresPerSquareMetre: 0.04, outGramsPerLitre: 0.05 } },
  { id: 'drift-bromide', name: 'Bromide', calculation: 'bath.drift', steps: [], given: { check: 'neg-1-dev-bromide', replenisherGramsPerLitre: 0.2, consumedGramsPerMetre: -0.0085 } },
  { id: 'drift-hq', name: 'Hydroquinone', calculation: 'bath.drift', steps: [], given: { check: 'neg-1-dev-hydroquinone', replenisherGramsPerLitre: 2.1, consumedGramsPerMetre: 0.01 } },
]

export const methods: WrittenPlan['methods'] = [...titrations, ...standards, ...others, ...figures]
