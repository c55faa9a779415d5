import type { ReadingCheck } from '../../plan/check.ts'
import type { LabPlan, Method } from '../../plan/lab-plan.ts'
import { useApp, useWords } from '../app-context.ts'
import { Screen } from '../screen.tsx'
import { CalibrateScreen } from './calibrate-screen.tsx'
import { MethodList } from './method-list.tsx'
import { MethodWork } from './method-work.tsx'
import '../bench/bench.css'
import '../round/check.css'
import '../exception/exception.css'
import '../trends/trends.css'
import './method.css'

/** The bench methods of the plan; one of them for its check at `/method/<check>`. */
export const MethodScreen = () => {
  const { router, plan } = useApp()
  const words = useWords()
  const [id] = router.here.value.rest
  const inForce = plan.value?.plan
  if (!inForce) return <Screen title={words.method.title} back><p>{words.now.noPlan.more}</p></Screen>
  if (!id) return <MethodList plan={inForce} />
  const found = methodOf(inForce, id)
  if (!found) return <Screen title={words.method.title} back><p>{words.method.noMethod}</p></Screen>
  const { check, method } = found
  return method.calculation === 'phMeter.calibrate' ? <CalibrateScreen plan={inForce} method={method} /> : <MethodWork key={check.id} plan={inForce} check={check} method={method} />
}

const methodOf = (plan: LabPlan, id: string): { check: ReadingCheck; method: Method } | undefined => {
  const check = plan.checks.find((it): it is ReadingCheck => it.kind === 'reading' && it.id === id)
  const method = plan.methods.find((it) => it.id === check?.method)
  return check && method ? { check, method } : undefined
}
