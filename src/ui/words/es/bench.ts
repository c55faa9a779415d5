import type { Translation } from '../translation.ts'
import type { bench as english } from '../en/bench.ts'

const valueText = (value: unknown): string => (value === undefined ? '' : typeof value === 'string' ? value : JSON.stringify(value))

export const bench: Translation<typeof english> = {
  mixing: 'Hojas de mezcla',
  mixingMore: 'Una preparación paso a paso, hasta su certificado',
  waste: 'Purgas y residuos',
  wasteMore: 'El desagüe, los bidones, adónde fue todo',
  methods: 'Métodos de banco',
  methodsMore: 'Valoraciones, valorantes, medidor de pH, densímetro',
  silver: 'Plata y lavado',
  silverMore: 'Depositada frente a traída, la celda, los lavados',
  replenish: 'Reposición',
  replenishMore: 'Adónde van los baños con la película que viene, y el ritmo',
  title: 'Banco',
  meta: (count) => `${count} cálculos`,
  find: 'Buscar un cálculo',
  nothingFound: { title: 'Ningún cálculo tiene esas palabras', more: 'Pruebe otra: pH, gamma, wash, silver.' },
  groups: {
    water: 'Agua y calor', hydrometer: 'Densímetro', phMeter: 'Medidor de pH', acidBase: 'Ácido y base', titration: 'Valoración', mix: 'Mezcla', bath: 'Corrección y reposición del baño', film: 'Película', silver: 'Plata',
    wash: 'Lavado', air: 'Aire', develop: 'Revelado', strip: 'Tiras', print: 'Copiado', chart: 'Gráficos de control', reading: 'Lecturas',
  },
  example: 'Rellenar con el ejemplo resuelto',
  clear: 'Vaciar el formulario',
  workOut: 'Calcular',
  result: 'Resultado',
  working: 'Desarrollo',
  source: 'Fuente',
  domain: 'Dónde vale',
  formula: 'Fórmula',
  optional: 'puede quedar vacío',
  oneOf: 'Rellene uno de estos',
  addRow: 'Añadir una línea',
  removeRow: (line) => `Quitar la línea ${line}`,
  pasteNumbers: 'Números, uno por línea o separados por espacios',
  name: 'Nombre',
  choose: 'Elija',
  yes: 'Sí',
  no: 'No',
  cannotBeSaid: 'no se puede decir',
  none: 'ninguno',
  showAll: (count) => `Los ${count}`,
  problems: {
    empty: 'Hace falta.',
    notANumber: 'Esto no es un número. Cifras y un solo punto o coma decimal.',
    notAChoice: 'Elija uno de la lista.',
    sameName: 'Este nombre está dos veces.',
  },
  refusal: ({ code, field, value, allowed }) => {
    const given = valueText(value)
    switch (code) {
      case 'missing':
        return `Falta ${field || 'un valor'}: ${allowed}.`
      case 'unknownField':
        return `${field} no es un campo de este cálculo.`
      case 'noAnswer':
        return `No hay respuesta para ${field || 'estos valores'}${given ? ` (${given})` : ''}. Admite ${allowed}.`
      default:
        return `${field || 'Los valores'}${given ? `: ${given}` : ''}. Admite ${allowed}.`
    }
  },
  lookOver: 'Revise los campos marcados.',
}
