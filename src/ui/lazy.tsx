import type { ComponentType } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import { useApp, useWords } from './app-context.ts'
import { Screen } from './screen.tsx'

/** A screen that is fetched when first opened; offline it comes from the service worker's store. */
export const lazy = (load: () => Promise<ComponentType>, Meanwhile: ComponentType = Opening): ComponentType => {
  let known: ComponentType | undefined
  const Lazy = () => {
    const [Loaded, setLoaded] = useState<ComponentType | undefined>(() => known)
    const [fault, setFault] = useState<Error>()
    const { loadWords } = useApp()
    useEffect(() => {
      if (Loaded) return
      Promise.all([load(), loadWords()]).then(([it]) => {
        known = it
        setLoaded(() => it)
      }, (cause: unknown) => setFault(new Error('a part of the app could not be fetched', { cause })))
    }, [])
    if (fault) throw fault
    return Loaded ? <Loaded /> : <Meanwhile />
  }
  return Lazy
}

const Opening = () => <Screen title={useWords().shell.loading} />
