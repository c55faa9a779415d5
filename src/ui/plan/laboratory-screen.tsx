import { useWords } from '../app-context.ts'
import { Card } from '../parts/card.tsx'
import { withValue } from './at.ts'
import { PartForm } from './form.tsx'
import { laboratoryFields } from './parts.ts'
import { PlanScreen } from './plan-screen.tsx'

/** Name, time zone, units, duty and emergency: what belongs to the laboratory as a whole. */
export const LaboratoryScreen = () => {
  const words = useWords().plan
  return (
    <PlanScreen
      draw={({ plan, parsed, mayEdit, change }) => ({
        title: words.laboratory,
        body: (
          <Card>
            <PartForm fields={laboratoryFields} value={plan} plan={plan} path={[]} problems={parsed.ok ? [] : parsed.problems} checkUnit={undefined} readOnly={!mayEdit} onChange={(path, value) => change(withValue(plan, path, value))} />
          </Card>
        ),
      })}
    />
  )
}
