import type { Step } from '../../science/calculation.ts'
import { workedText } from '../value-text.ts'

/** The working as it would stand on paper: what, how, the number. */
export const Working = ({ steps, name }: { steps: readonly Step[]; name: string }) => (
  <table class="working-sheet">
    <caption class="unseen">{name}</caption>
    <tbody>
      {steps.map((step, index) => (
        <tr key={index}>
          <th scope="row">
            {step.says}
            {step.formula ? <span class="small quiet" style={{ display: 'block' }}>{step.formula}</span> : null}
          </th>
          <td>
            {typeof step.value === 'number' ? workedText(step.value) : step.value}
            {step.unit && step.unit !== '1' ? <span class="quiet"> {step.unit}</span> : null}
          </td>
        </tr>
      ))}
    </tbody>
  </table>
)
