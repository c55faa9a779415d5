import type { ComponentType } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import { useWords } from './app-context.ts'
import { Screen } from './screen.tsx'

/** A screen that is fetched when first opened; offline it comes from the service worker's store. */
export const lazy = (load: () => Promise<ComponentType>): ComponentType => {
  let known: ComponentType | undefined
  const Lazy = () => {
    const [Loaded, setLoaded] = useState<ComponentType | undefined>(() => known)
    const [fault, setFault] = useState<unknown>()
    const words = useWords()
    useEffect(() => {
      if (Loaded) return
      load().then((it) => {
        known = it
        setLoaded(() => it)
      }, setFault)
    }, [])
    if (fault) throw fault
    return Loaded ? <Loaded /> : <Screen title={words.shell.loading} />
  }
  return Lazy
}
