import type { ComponentType } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import { useApp, useWords } from './app-context.ts'
import { Screen } from './screen.tsx'

/** A part of the app that is not on this phone and cannot be fetched now. */
export class NotHere extends Error {}

/** A screen, or a part of one, that is fetched when first drawn; offline it comes from the service worker's store. `says`: whether the first words are enough for it. */
export const lazy = <P extends object = object>(load: () => Promise<ComponentType<P>>, Meanwhile: ComponentType = Opening, says: 'firstWords' | 'words' = 'words'): ComponentType<P> & { fetch(): Promise<void> } => {
  let known: ComponentType<P> | undefined
  const Lazy = (props: P) => {
    const [Loaded, setLoaded] = useState<ComponentType<P> | undefined>(() => known)
    const [fault, setFault] = useState<Error>()
    const { loadWords } = useApp()
    useEffect(() => {
      if (Loaded) return
      Promise.all([load(), says === 'words' ? loadWords() : undefined]).then(([it]) => {
        known = it
        setLoaded(() => it)
      }, (cause: unknown) => setFault(new NotHere('a part of the app could not be fetched', { cause })))
    }, [])
    if (fault) throw fault
    return Loaded ? <Loaded {...props} /> : <Meanwhile />
  }
  return Object.assign(Lazy, {
    /** Ahead of being drawn, which then takes no time. */
    fetch: async () => {
      known = await load()
    },
  })
}

const Opening = () => <Screen title={useWords().shell.loading}><div class="coming" /></Screen>
