import { useState } from 'preact/hooks'
import type { BroughtBack, LeftWhy, RecordFound, RecordProblem } from '../../device/record-import.ts'
import { useApp, useWords } from '../app-context.ts'
import { Banner } from '../parts/banner.tsx'
import { Button } from '../parts/button.tsx'
import { Card, Row, Rows } from '../parts/card.tsx'

type State =
  | { at: 'start' }
  | { at: 'looking' }
  | { at: 'offline'; text: string }
  | { at: 'problem'; problem: RecordProblem }
  | { at: 'found'; found: RecordFound }
  | { at: 'done'; done: BroughtBack; found: RecordFound }

/** An export brought back: looked through first and said what is in it, then handed in where a person says so. */
export const BringCard = () => {
  const { archive } = useApp()
  const words = useWords().record
  const [state, setState] = useState<State>({ at: 'start' })
  const [busy, setBusy] = useState(false)
  const [progress, setProgress] = useState('')
  const tell = (done: number, of: number): void => setProgress(words.progress(done, of))
  const look = async (chosen: File | string): Promise<void> => {
    setState({ at: 'looking' })
    setProgress('')
    const text = typeof chosen === 'string' ? chosen : await chosen.text()
    const it = await archive()
    // What the server has is known before anything is compared with it.
    if (!(await it.exchange())) return setState({ at: 'offline', text })
    const looked = await it.lookThrough(text, tell)
    setState(looked.ok ? { at: 'found', found: looked.found } : { at: 'problem', problem: looked.problem })
  }
  const bring = async (found: RecordFound): Promise<void> => {
    if (busy) return
    setBusy(true)
    try {
      const it = await archive()
      const done = await it.bringBack(found, tell)
      await it.exchange()
      setState({ at: 'done', done, found })
    } finally {
      setBusy(false)
    }
  }
  return (
    <Card title={words.bring}>
      <p class="small quiet">{words.bringMore}</p>
      {state.at === 'looking' ? <Banner title={words.looking}>{progress}</Banner> : null}
      {state.at === 'offline' ? (
        <Banner kind="warn" title={words.offline}>
          <Button wide onPress={() => look(state.text)}>{words.again}</Button>
        </Banner>
      ) : null}
      {state.at === 'problem' ? <Banner kind="stop" title={words.problem(state.problem)} /> : null}
      {state.at === 'found' ? <Found found={state.found} progress={busy ? progress : undefined} onBring={() => bring(state.found)} /> : null}
      {state.at === 'done' ? <Done done={state.done} found={state.found} /> : null}
      {state.at === 'looking' ? null : (
        <label class="button wide file-button">
          {words.choose}
          <input
            class="unseen"
            type="file"
            accept="application/json,.json"
            onChange={(event) => {
              const [file] = event.currentTarget.files ?? []
              if (file) void look(file)
              // The same file can be chosen again.
              event.currentTarget.value = ''
            }}
          />
        </label>
      )}
    </Card>
  )
}

const Found = ({ found, progress, onBring }: { found: RecordFound; progress: string | undefined; onBring(): Promise<void> }) => {
  const words = useWords().record
  const missing = found.missing.reduce((sum, { entries }) => sum + entries.length, 0)
  const left = new Map<LeftWhy, number>()
  for (const { why } of found.left) left.set(why, (left.get(why) ?? 0) + 1)
  return (
    <>
      <h3>{words.found}</h3>
      <Rows>
        <Row what={words.of(found.laboratory)} under={words.entries(found.entries, found.devices)} />
        <Row what={words.here} value={found.here} />
        <Row what={words.missing} under={found.missing.map(({ name, entries }) => `${name}: ${entries.length}`).join(', ')} value={<strong>{missing}</strong>} />
        {[...left].map(([why, number]) => <Row key={why} what={`${words.left}: ${words.why[why]}`} value={number} />)}
      </Rows>
      {progress === undefined ? null : <Banner title={words.bringing}>{progress}</Banner>}
      {missing ? <Button kind="go" onPress={onBring}>{words.save(missing)}</Button> : found.left.length === 0 ? <p>{words.nothingMissing}</p> : null}
    </>
  )
}

const Done = ({ done, found }: { done: BroughtBack; found: RecordFound }) => {
  const words = useWords().record
  return (
    <>
      <Banner title={words.done(done.brought)} />
      {done.problem ? <Banner kind="warn" title={words.cutOff} /> : null}
      {done.refused.map(({ dev, code }) => <p key={dev}>{words.refused(found.missing.find((it) => it.dev === dev)?.name ?? dev, code)}</p>)}
    </>
  )
}
