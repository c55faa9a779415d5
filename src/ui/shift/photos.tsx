import { useEffect, useState } from 'preact/hooks'
import type { Hash } from '../../record/ids.ts'
import { useApp, useWords } from '../app-context.ts'

/** The pictures that an entry names by their hash: from this phone where it has them, else from the server. */
export const Photos = ({ of }: { of: readonly Hash[] }) => <>{of.map((sha256) => <Picture key={sha256} sha256={sha256} />)}</>

const Picture = ({ sha256 }: { sha256: Hash }) => {
  const { archive } = useApp()
  const words = useWords().shift.entry
  const [address, setAddress] = useState<string>()
  const [isMissing, setIsMissing] = useState(false)
  useEffect(() => {
    let isWanted = true
    let made: string | undefined
    void archive()
      .then((it) => it.photo(sha256))
      .then((picture) => {
        if (!isWanted) return
        if (!picture) return setIsMissing(true)
        made = URL.createObjectURL(picture)
        setAddress(made)
      })
    return () => {
      isWanted = false
      if (made) URL.revokeObjectURL(made)
    }
  }, [sha256])
  if (isMissing) return <p class="small quiet">{words.photoMissing}</p>
  return address ? <span class="evidence-photo"><img src={address} alt={words.photo} /></span> : <p class="small quiet">{words.photoComing}</p>
}
