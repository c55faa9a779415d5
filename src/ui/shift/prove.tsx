import { useEffect, useState } from 'preact/hooks'
import type { PersonId } from '../../plan/ids.ts'
import type { Hash } from '../../record/ids.ts'
import { useApp, useWords } from '../app-context.ts'
import type { NoAnswer } from '../office.ts'
import { Banner } from '../parts/banner.tsx'
import { Button } from '../parts/button.tsx'
import { Field } from '../parts/field.tsx'
import { HoldToConfirm } from '../parts/hold-to-confirm.tsx'

/** The server's word that the signer keyed their passphrase anew; or none, and then the signature is provisional. */
export type Word = { provisional: false; proof: string } | { provisional: true }

interface ProveGiven {
  by: PersonId
  /** Hash of exactly what is signed. */
  about(): Promise<Hash>
  /** Saves the signature. Whether it was saved. */
  onWord(word: Word, about: Hash): Promise<boolean>
  /** What is still missing, said beside its field once somebody has tried. */
  isComplete(): boolean
  /** Whether signing without the server makes sense here at all. */
  mayBeProvisional: boolean
  name: string
}

/**
 * The last step of a signature. First everything is fetched, so that it covers what the laboratory knows; then the passphrase goes to the server,
 * which gives its word for just this content. Without the server the signature can be given provisionally.
 */
export const Prove = ({ by, about, onWord, isComplete, mayBeProvisional, name }: ProveGiven) => {
  const { office, archive } = useApp()
  const all = useWords()
  const words = all.shift.sign
  const [isFresh, setIsFresh] = useState<boolean>()
  const [passphrase, setPassphrase] = useState('')
  const [refusal, setRefusal] = useState<NoAnswer>()
  const [busy, setBusy] = useState(false)
  const fetchAll = async (): Promise<void> => {
    setIsFresh(undefined)
    setRefusal(undefined)
    setIsFresh(await (await archive()).exchange())
  }
  useEffect(() => void fetchAll(), [])
  const isOffline = isFresh === false || refusal?.code === 'offline'
  const sign = async (): Promise<void> => {
    if (!isComplete() || busy) return
    setBusy(true)
    try {
      const hash = await about()
      const asked = await office.prove(by, passphrase, hash)
      setPassphrase('')
      setRefusal(asked.ok ? undefined : asked.refusal)
      if (asked.ok) await onWord({ provisional: false, proof: asked.value.proof }, hash)
    } finally {
      setBusy(false)
    }
  }
  const signProvisionally = async (): Promise<void> => {
    if (!isComplete() || busy) return
    setBusy(true)
    try {
      await onWord({ provisional: true }, await about())
    } finally {
      setBusy(false)
    }
  }
  if (isFresh === undefined) return <Banner title={words.fetching} />
  if (isOffline) {
    return (
      <Banner kind="warn" title={words.offline}>
        {mayBeProvisional ? <p>{words.offlineMore}</p> : null}
        <Button wide onPress={() => fetchAll()}>{words.again}</Button>
        {mayBeProvisional ? <HoldToConfirm done={busy} hint={all.parts.hold} onConfirm={() => void signProvisionally()}>{words.provisional}</HoldToConfirm> : null}
      </Banner>
    )
  }
  return (
    <>
      {refusal ? <Banner kind="stop" title={all.enrol.noAnswer(refusal)} /> : null}
      <Field name={words.passphrase} kind="password" value={passphrase} onChange={setPassphrase} autocomplete="current-password" />
      <Button kind="go" notYet={busy ? all.shell.loading : passphrase ? undefined : words.passphrase} onPress={() => sign()}>{name}</Button>
    </>
  )
}
