import { useWords } from '../app-context.ts'
import { Banner } from '../parts/banner.tsx'
import { Button } from '../parts/button.tsx'
import type { UseReader } from './use-reader.ts'

/** What has to happen before the first picture: to agree, to fetch, to start. */
export const Consent = ({ stage, fetch, onKey }: Pick<UseReader, 'stage' | 'fetch'> & { onKey(): void }) => {
  const words = useWords().camera
  switch (stage.at) {
    case 'consent':
      return (
        <>
          <p class="lead">{words.consent.title}</p>
          <p>{words.consent.more}</p>
          <p class="small quiet">{words.consent.private}</p>
          <Button kind="go" onPress={fetch}>{words.consent.fetch((stage.sentBytes / 1e6).toFixed(1))}</Button>
          <Button wide onPress={onKey}>{words.key}</Button>
        </>
      )
    case 'fetching':
      return (
        <>
          <p class="lead">{words.consent.fetching}</p>
          <progress class="fetching" aria-label={words.consent.fetching} value={stage.share} max={1} />
          <p role="status">{Math.floor(stage.share * 100)} % · {((stage.share * stage.sentBytes) / 1e6).toFixed(1)} / {(stage.sentBytes / 1e6).toFixed(1)} MB</p>
        </>
      )
    case 'notFetched':
      return (
        <>
          <Banner kind="stop" title={words.fetchFaults[stage.why]} />
          <Button kind="go" onPress={fetch}>{words.again}</Button>
          <Button wide onPress={onKey}>{words.key}</Button>
        </>
      )
    case 'fault':
      return (
        <>
          <Banner kind="stop" title={words.readerFaults[stage.code]} />
          <Button kind="go" onPress={fetch}>{words.again}</Button>
          <Button wide onPress={onKey}>{words.key}</Button>
        </>
      )
    default:
      return <p class="quiet" role="status">{words.consent.opening}</p>
  }
}
