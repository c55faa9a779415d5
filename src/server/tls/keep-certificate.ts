import type { Pair } from './authority.ts'
import type { CertificateSource } from './sources.ts'

/** How often files are looked at: a renewed certificate is in force within this. */
export const usualEveryMs = 60_000

/**
 * Serves what the source has by now, without a restart: connections that are open stay, new ones get the new certificate. A file that cannot be
 * used leaves the certificate as it is and is told once.
 */
export const keepCertificate = (
  source: CertificateSource,
  given: { first: Pair; everyMs?: number; serve: (pair: Pair) => void; report: (problem: unknown) => void },
): { stop: () => void; look: () => Promise<void> } => {
  let current = given.first
  let told = ''
  const look = async (): Promise<void> => {
    try {
      const pair = await source.load()
      if (pair.cert !== current.cert || pair.key !== current.key) given.serve(pair)
      current = pair
      told = ''
    } catch (error) {
      const text = String(error)
      if (text !== told) given.report(error)
      told = text
    }
  }
  const timer = setInterval(() => void look(), given.everyMs ?? usualEveryMs)
  timer.unref()
  return { stop: () => clearInterval(timer), look }
}
