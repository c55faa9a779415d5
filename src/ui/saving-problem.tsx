import { useWords } from './app-context.ts'
import { Banner } from './parts/banner.tsx'
import type { Saving } from './saving.ts'

export const SavingProblem = ({ of }: { of: Saving }) => {
  const words = useWords()
  return of.problem ? (
    <Banner kind="stop" title={words.saving.problems[of.problem.code]}>
      {of.problem.code === 'unfit' || of.problem.code === 'fault' ? <code>{of.problem.detail}</code> : null}
    </Banner>
  ) : null
}
