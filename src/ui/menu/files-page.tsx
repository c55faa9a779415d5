import { useState } from 'preact/hooks'
import { useApp, useWords, type HandedIn } from '../app-context.ts'
import { Banner } from '../parts/banner.tsx'
import { Button } from '../parts/button.tsx'
import { Card } from '../parts/card.tsx'
import { Screen } from '../screen.tsx'
import { saveFile } from './save-file.ts'
import './menu.css'

/** What a phone could not send leaves it as signed files, and comes into the record through any other phone. */
export const FilesPage = () => {
  const { phone, sending, trouble } = useApp()
  const words = useWords().menu.files
  const { waiting } = sending.value
  const [done, setDone] = useState<HandedIn>()
  const [busy, setBusy] = useState(false)
  const save = async (): Promise<void> => {
    for (const { name, json } of await phone.unsentFiles()) saveFile(name, json)
  }
  const saveReadable = async (): Promise<void> => saveFile('bathkeeper-readable.jsonl', await phone.readableRecord(), 'application/x-ndjson')
  const take = async (chosen: File): Promise<void> => {
    setBusy(true)
    setDone(undefined)
    try {
      setDone(await phone.handIn(await chosen.text()))
    } finally {
      setBusy(false)
    }
  }
  const isDamaged = trouble.value === 'corrupt' || trouble.value === 'unreadable'
  return (
    <Screen title={words.title} back>
      <div class="columns">
        <Card title={words.out}>
          <p>{waiting ? words.outMore(waiting) : words.nothing}</p>
          {waiting ? <Button wide onPress={() => save()}>{words.save}</Button> : null}
          {isDamaged ? (
            <>
              <p>{words.readableMore}</p>
              <Button wide onPress={() => saveReadable()}>{words.readable}</Button>
            </>
          ) : null}
        </Card>
        <Card title={words.in}>
          <p>{words.inMore}</p>
          {done?.ok ? (
            <Banner kind={done.taken === done.count ? 'plain' : 'warn'} title={words.taken(done.taken, done.count, done.phone)}>
              {done.aside ? <p>{words.aside}</p> : done.why ? <p>{words.why(done.why)}</p> : null}
            </Banner>
          ) : null}
          {done && !done.ok ? <Banner kind="stop" title={words.refused[done.why]}>{done.detail ? <p class="small">{words.detail(done.detail)}</p> : null}</Banner> : null}
          <label class="button wide">
            {busy ? words.busy : words.choose}
            <input
              class="unseen"
              type="file"
              accept="application/json,.json"
              disabled={busy}
              onChange={(event) => {
                const { currentTarget } = event
                const [chosen] = currentTarget.files ?? []
                if (chosen) void take(chosen).finally(() => (currentTarget.value = ''))
              }}
            />
          </label>
        </Card>
      </div>
    </Screen>
  )
}
