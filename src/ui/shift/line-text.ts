import type { LabPlan } from '../../plan/lab-plan.ts'
import { personOf } from '../../plan/find.ts'
import { fullName } from '../../plan/full-name.ts'
import type { PersonId } from '../../plan/ids.ts'
import type { Line } from '../../projections/line.ts'
import { materialName } from '../material-name.ts'
import type { Words } from '../words/words.ts'

export const personName = (plan: LabPlan, person: PersonId | null): string => (person === null ? '' : (personOf(plan, person)?.name ?? person))

export const checkName = (plan: LabPlan, id: string): string => {
  const check = plan.checks.find((it) => it.id === id)
  return check ? fullName(plan, check) : id
}

/** What one entry says, in one line. */
export const lineText = (line: Line, plan: LabPlan, words: Words): string => {
  const { data, kind } = line
  const kindName = words.shift.entry.kinds[kind]
  switch (kind) {
    case 'reading':
      return `${checkName(plan, data.check)} ${data.keyed} ${data.unit === 'pH' || data.unit === '1' ? '' : data.unit} ${data.verdict}`.replaceAll(/ +/g, ' ')
    case 'look':
      return `${checkName(plan, data.check)}: ${data.right ? words.round.verdict.right : words.round.verdict.notRight}`
    case 'strip':
      return `${checkName(plan, data.check)} ${data.verdict}`
    case 'skip':
      return `${checkName(plan, data.check)}: ${data.remark ?? words.round.skip.reasons[data.reason]}`
    case 'add':
      return `${materialName(plan, data.material, words)} ${data.poured.keyed} ${data.poured.unit}`
    case 'note':
      return `${words.shift.notes.kinds[data.about]}: ${data.text}`
    case 'hold':
    case 'release':
      return `${kindName}: ${data.reason}`
    case 'run':
      return `${plan.machines.find(({ id }) => id === data.machine)?.name ?? data.machine}: ${words.marks.machine[data.state]}`
    case 'mix':
      return `${kindName}: ${plan.formulas?.find(({ id }) => id === data.formula)?.name ?? data.formula}, ${data.litres} L`
    case 'mixStep':
      return `${kindName}: ${words.corrections.substance(data.substance) ?? data.substance} ${data.amount} ${data.unit}`
    case 'mixCertificate':
      return `${kindName}: ${data.label}`
    case 'mixEnd':
      return data.why ? `${kindName}: ${data.why}` : kindName
    case 'runOff':
      return `${kindName}: ${words.waste.kinds[data.waste] ?? data.waste} ${data.litres} L, ${data.destination.to === 'drum' ? (words.waste.drums[data.destination.drum] ?? data.destination.drum) : words.waste.to[data.destination.to]}`
    case 'drumOut':
      return `${kindName}: ${words.waste.drums[data.drum] ?? data.drum}, ${data.to}`
    case 'responseReset':
      return `${kindName}: ${data.why}`
    case 'acknowledge':
      return `${kindName}: ${data.remark}`
    case 'amend':
    case 'withdraw':
      return `${kindName}: ${data.why}`
    case 'handover':
      return data.notes ? `${kindName}: ${data.notes}` : kindName
    default:
      return kindName
  }
}
