import { signal, type ReadonlySignal } from '@preact/signals'

/** The browser's own question, kept until somebody wants it. */
interface InstallQuestion extends Event {
  prompt(): Promise<unknown>
}

export interface Install {
  /** Lets the browser ask. It serves once. */
  ask(): Promise<void>
}

/** Browsers ask whether to install when it suits them, which may be in the middle of a round. The question is kept, and put when it suits the person. */
export const keepInstall = (): ReadonlySignal<Install | undefined> => {
  const install = signal<Install | undefined>(undefined)
  addEventListener('beforeinstallprompt', (event) => {
    event.preventDefault()
    install.value = {
      ask: async () => {
        install.value = undefined
        await (event as InstallQuestion).prompt()
      },
    }
  })
  addEventListener('appinstalled', () => (install.value = undefined))
  return install
}
