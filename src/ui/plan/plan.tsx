import { useApp } from '../app-context.ts'
import { LaboratoryScreen } from './laboratory-screen.tsx'
import { ListScreen } from './list-screen.tsx'
import { NewMachineScreen } from './new-machine-screen.tsx'
import { PartScreen } from './part-screen.tsx'
import { PlanHome } from './plan-home.tsx'
import { ReviewScreen } from './review-screen.tsx'
import { RevisionScreen } from './revision-screen.tsx'

/** The lab plan: `/menu/plan`, its parts at `/menu/plan/checks/<id>`, one just added at `/menu/plan/checks/<id>/new`, what changed at `/menu/plan/review`. */
export const Plan = () => {
  const { router } = useApp()
  const [, section, id, more] = router.here.value.rest
  const isNew = more === 'new'
  switch (section) {
    case 'laboratory':
      return <LaboratoryScreen />
    case 'review':
      return <ReviewScreen />
    case 'revision':
      return <RevisionScreen entry={id ?? ''} />
    case 'new-machine':
      return <NewMachineScreen />
    case 'people':
    case 'shifts':
    case 'materials':
    case 'methods':
    case 'formulas':
    case 'cautions':
      return id === undefined ? <ListScreen list={section} /> : <PartScreen list={section} id={id} isNew={isNew} />
    case 'machines':
    case 'stations':
    case 'checks':
      return id === undefined ? <PlanHome /> : <PartScreen list={section} id={id} isNew={isNew} />
    default:
      return <PlanHome />
  }
}
