import { machineState } from '../../plan/schedule.ts'
import { quantity } from '../../plan/check.ts'
import { stationKind } from '../../plan/machine.ts'
import { formKeys } from '../../science/substances.ts'
import type { ListName } from '../../plan/without.ts'
import type { PartFields } from './field.ts'

/** Each part of the lab plan, its fields in the order in which one thinks of them. Forms, differences and the names in a refusal are made of this. */

const ofCheck = { ofCheck: true } as const

const limitFields = {
  aim: { says: 'aim', kind: 'number', unit: ofCheck },
  warningLow: { says: 'warningLow', kind: 'number', unit: ofCheck, optional: true },
  warningHigh: { says: 'warningHigh', kind: 'number', unit: ofCheck, optional: true },
  actionLow: { says: 'actionLow', kind: 'number', unit: ofCheck, optional: true },
  actionHigh: { says: 'actionHigh', kind: 'number', unit: ofCheck, optional: true },
} as const satisfies PartFields

const minutes = { kind: 'number', unit: 'min' } as const

const timing = {
  schedule: {
    says: 'schedule', kind: 'variant',
    of: {
      interval: { minutes: { says: 'everyMinutes', ...minutes }, graceMinutes: { says: 'graceMinutes', ...minutes } },
      shift: { afterMinutes: { says: 'afterMinutes', ...minutes }, graceMinutes: { says: 'graceMinutes', ...minutes } },
      state: { graceMinutes: { says: 'graceMinutes', ...minutes } },
    },
    fresh: {
      interval: { kind: 'interval', minutes: 60, graceMinutes: 15 },
      shift: { kind: 'shift', afterMinutes: 30, graceMinutes: 60 },
      state: { kind: 'state', graceMinutes: 15 },
    },
  },
  states: { says: 'states', kind: 'some', of: machineState.options },
  immediateHold: { says: 'immediateHold', kind: 'flag' },
} as const satisfies PartFields

const rarely = {
  safeguard: { says: 'safeguard', kind: 'choice', of: ['eyewash', 'exhaust'], optional: true },
  calibrates: { says: 'calibrates', kind: 'text', optional: true },
  darkWork: { says: 'darkWork', kind: 'flag', optional: true },
} as const satisfies PartFields

const how = { says: 'how', kind: 'text', long: true, optional: true } as const

export const checkFields: Readonly<Record<'reading' | 'look' | 'strip', PartFields>> = {
  reading: {
    name: { says: 'checkName', kind: 'text' },
    station: { says: 'station', kind: 'pick', from: 'stations' },
    quantity: { says: 'quantity', kind: 'choice', of: quantity.options },
    of: { says: 'quantityOf', kind: 'text', suggest: 'substances', optional: true },
    unit: { says: 'unit', kind: 'text', suggest: 'units' },
    step: { says: 'step', kind: 'number', unit: ofCheck },
    limits: { says: 'limits', kind: 'group', fields: limitFields },
    holdBelow: { says: 'holdBelow', kind: 'number', unit: ofCheck, optional: true },
    holdAbove: { says: 'holdAbove', kind: 'number', unit: ofCheck, optional: true },
    ...timing,
    instrument: {
      says: 'instrument', kind: 'group',
      fields: { name: { says: 'instrumentName', kind: 'text' }, low: { says: 'instrumentLow', kind: 'number', unit: ofCheck }, high: { says: 'instrumentHigh', kind: 'number', unit: ofCheck } },
    },
    settleSeconds: { says: 'settle', kind: 'number', unit: 's', optional: true },
    how,
    method: { says: 'method', kind: 'pick', from: 'methods', optional: true },
    pairedWith: { says: 'pairedWith', kind: 'pick', from: 'checks', optional: true },
    pairedWithin: { says: 'pairedWithin', kind: 'number', unit: ofCheck, optional: true },
    ...rarely,
  },
  look: {
    name: { says: 'checkName', kind: 'text' },
    station: { says: 'station', kind: 'pick', from: 'stations' },
    right: { says: 'right', kind: 'text' },
    wrong: { says: 'wrong', kind: 'text' },
    ...timing,
    how,
    ...rarely,
  },
  strip: {
    name: { says: 'checkName', kind: 'text' },
    station: { says: 'station', kind: 'pick', from: 'stations' },
    figures: {
      says: 'figures', kind: 'list',
      of: { figure: { says: 'figure', kind: 'text', suggest: 'figures' }, unit: { says: 'unit', kind: 'text', suggest: 'units' }, step: { says: 'step', kind: 'number', unit: ofCheck }, limits: { says: 'limits', kind: 'group', fields: limitFields } },
      fresh: { figure: 'gamma', unit: '1', step: 0.01, limits: {} },
    },
    ...timing,
    how,
    steps: {
      says: 'stripSteps', kind: 'list', optional: true,
      of: { name: { says: 'stripStepName', kind: 'text' }, logExposure: { says: 'logExposure', kind: 'number', optional: true } },
      fresh: { name: '' },
    },
    gamma: {
      says: 'gammaBy', kind: 'group', optional: true, fresh: { by: 'greatestSlope' },
      fields: {
        by: { says: 'gammaDefinition', kind: 'choice', of: ['greatestSlope', 'betweenDensities', 'printControl'] },
        fromDensity: { says: 'fromDensity', kind: 'number', unit: 'D', optional: true },
        toDensity: { says: 'toDensity', kind: 'number', unit: 'D', optional: true },
      },
    },
    law: {
      says: 'law', kind: 'group', optional: true, fresh: {},
      fields: {
        gammaInfinity: { says: 'gammaInfinity', kind: 'number' },
        ratePerMinute: { says: 'ratePerMinute', kind: 'number', unit: '1/min' },
        coefficientPerTenCelsius: { says: 'coefficient', kind: 'number', optional: true },
      },
    },
    contrast: { says: 'contrast', kind: 'group', optional: true, fresh: {}, fields: { upper: { says: 'contrastUpper', kind: 'text' }, lower: { says: 'contrastLower', kind: 'text' } } },
    ...rarely,
  },
}

const form = { says: 'form', kind: 'choice', of: formKeys, optional: true } as const

export const laboratoryFields: PartFields = {
  name: { says: 'laboratoryName', kind: 'text' },
  timeZone: { says: 'timeZone', kind: 'zone' },
  units: {
    says: 'units', kind: 'group',
    fields: {
      temperature: { says: 'unitsTemperature', kind: 'choice', of: ['°C', '°F'] },
      volume: { says: 'unitsVolume', kind: 'choice', of: ['L', 'US gal', 'UK gal'] },
      mass: { says: 'unitsMass', kind: 'choice', of: ['g', 'oz'] },
      length: { says: 'unitsLength', kind: 'choice', of: ['m', 'ft'] },
    },
  },
  onCall: { says: 'onCall', kind: 'pick', from: 'people', optional: true },
  emergency: {
    says: 'emergency', kind: 'group',
    fields: {
      calls: { says: 'calls', kind: 'list', of: { who: { says: 'callWho', kind: 'text' }, number: { says: 'callNumber', kind: 'text' } }, fresh: { who: '', number: '' } },
      eyewash: { says: 'eyewash', kind: 'text' },
      assembly: { says: 'assembly', kind: 'text' },
    },
  },
}

export const partFields: Readonly<Record<Exclude<ListName, 'checks'>, PartFields>> = {
  people: {
    name: { says: 'personName', kind: 'text' },
    role: { says: 'role', kind: 'choice', of: ['operator', 'supervisor'] },
  },
  shifts: {
    name: { says: 'shiftName', kind: 'text' },
    from: { says: 'shiftFrom', kind: 'wallTime' },
    to: { says: 'shiftTo', kind: 'wallTime' },
  },
  machines: {
    name: { says: 'machineName', kind: 'text' },
    stock: { says: 'stock', kind: 'choice', of: ['negative', 'positive'] },
    light: { says: 'light', kind: 'choice', of: ['panchromatic', 'orthochromatic', 'blueSensitive'] },
    gaugeMillimetres: { says: 'gauge', kind: 'choice', of: [35, 16, 65, 8] },
    aimMetresPerMinute: { says: 'aimSpeed', kind: 'number', unit: 'm/min' },
    reserveMetres: { says: 'reserve', kind: 'number', unit: 'm', optional: true },
  },
  stations: {
    name: { says: 'stationName', kind: 'text' },
    short: { says: 'short', kind: 'text' },
    kind: { says: 'stationKind', kind: 'choice', of: stationKind.options },
    pathMetres: { says: 'path', kind: 'number', unit: 'm', optional: true },
    bath: {
      says: 'bath', kind: 'group', optional: true, fresh: { constituents: [] },
      fields: {
        litres: { says: 'litres', kind: 'number', unit: 'L' },
        headroomLitres: { says: 'headroom', kind: 'number', unit: 'L' },
        surfaceSquareMetres: { says: 'surface', kind: 'number', unit: 'm²', optional: true },
        circulationLitresPerMinute: { says: 'circulation', kind: 'number', unit: 'L/min' },
        constituents: {
          says: 'constituents', kind: 'list',
          of: { substance: { says: 'substance', kind: 'pick', from: 'substances' }, form, gramsPerLitre: { says: 'gramsPerLitre', kind: 'number', unit: 'g/L' } },
          fresh: {},
        },
      },
    },
  },
  materials: {
    name: { says: 'materialName', kind: 'text' },
    substance: { says: 'substance', kind: 'text', suggest: 'substances' },
    strength: {
      says: 'strength', kind: 'variant',
      of: {
        molar: { molPerLitre: { says: 'molPerLitre', kind: 'number', unit: 'mol/L' } },
        percent: { percentByMass: { says: 'percentByMass', kind: 'number', unit: '%' }, gramsPerMillilitre: { says: 'gramsPerMillilitre', kind: 'number', unit: 'g/mL' } },
        solid: { form: { says: 'form', kind: 'choice', of: formKeys } },
      },
      fresh: { molar: { kind: 'molar' }, percent: { kind: 'percent' }, solid: { kind: 'solid', form: 'anhydrous' } },
    },
    unit: { says: 'doseUnit', kind: 'choice', of: ['mL', 'g'] },
    caution: { says: 'caution', kind: 'pick', from: 'cards' },
    for: { says: 'for', kind: 'pickSome', from: 'baths' },
    safeSingleDosePerLitre: { says: 'safeSingleDose', kind: 'number', optional: true },
    secondPerson: { says: 'secondPerson', kind: 'flag', optional: true },
    stock: {
      says: 'shelf', kind: 'group', optional: true, fresh: {},
      fields: {
        amount: { says: 'stockAmount', kind: 'number', unit: ofCheck },
        unit: { says: 'stockUnit', kind: 'choice', of: ['L', 'kg'] },
        countedAt: { says: 'countedAt', kind: 'instant' },
        lot: { says: 'stockLot', kind: 'text', optional: true },
        expires: { says: 'expires', kind: 'date', optional: true },
        least: { says: 'stockLeast', kind: 'number', unit: ofCheck, optional: true },
      },
    },
  },
  methods: {
    name: { says: 'methodName', kind: 'text' },
    caution: { says: 'caution', kind: 'pick', from: 'cards', optional: true },
    steps: { says: 'methodSteps', kind: 'list', of: { says: { says: 'stepSays', kind: 'text', long: true }, seconds: { says: 'stepSeconds', kind: 'number', unit: 's', optional: true }, caution: { says: 'caution', kind: 'pick', from: 'cards', optional: true } }, fresh: { says: '' } },
    calculation: { says: 'calculation', kind: 'pick', from: 'calculations', optional: true },
    given: { says: 'given', kind: 'table', optional: true },
    asks: { says: 'asks', kind: 'table', optional: true },
    titrants: { says: 'titrants', kind: 'table', optional: true },
    endPoint: { says: 'endPoint', kind: 'choice', of: ['curve'], optional: true },
    repeatabilityLimit: { says: 'repeatability', kind: 'number', optional: true },
  },
  cautions: {
    name: { says: 'cautionName', kind: 'text' },
    addsTo: { says: 'addsTo', kind: 'pick', from: 'builtInCards', optional: true },
    hazards: { says: 'hazards', kind: 'text', optional: true },
    never: { says: 'cautionNever', kind: 'text', long: true },
    wear: { says: 'cautionWear', kind: 'text', long: true, optional: true },
    ventilation: { says: 'cautionAir', kind: 'text', long: true, optional: true },
    firstAid: { says: 'cautionFirstAid', kind: 'text', long: true, optional: true },
    spill: { says: 'cautionSpill', kind: 'text', long: true, optional: true },
  },
  formulas: {
    name: { says: 'formulaName', kind: 'text' },
    for: { says: 'formulaFor', kind: 'pick', from: 'stations' },
    litres: { says: 'batchLitres', kind: 'number', unit: 'L' },
    startWaterFraction: { says: 'startWater', kind: 'number', optional: true },
    startCelsius: { says: 'startCelsius', kind: 'number', unit: '°C', optional: true },
    steps: {
      says: 'formulaSteps', kind: 'list',
      of: {
        substance: { says: 'substance', kind: 'pick', from: 'substances' },
        material: { says: 'fromMaterial', kind: 'pick', from: 'materials', optional: true },
        form,
        gramsPerLitre: { says: 'gramsPerLitre', kind: 'number', unit: 'g/L', optional: true },
        millilitresPerLitre: { says: 'millilitresPerLitre', kind: 'number', unit: 'mL/L', optional: true },
      },
      fresh: {},
    },
    limits: {
      says: 'newMixLimits', kind: 'group', optional: true, fresh: { pH: {}, specificGravity: {} },
      fields: { pH: { says: 'mixPh', kind: 'group', fields: limitFields }, specificGravity: { says: 'mixGravity', kind: 'group', fields: limitFields } },
    },
    setBy: { says: 'formulaSource', kind: 'text' },
  },
}
