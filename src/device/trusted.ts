/** What Trusted Types gives for an address; where the browser has none, the address itself. */
interface Policy {
  createScriptURL(url: string): string
}
interface Factory {
  createPolicy(name: string, rules: { createScriptURL(url: string): string }): Policy
}

export const policyName = 'bathkeeper'

/** The only scripts that are ever started by address: the service worker and the meter reader's worker, both of this site. */
const allowed = ['/sw.js', '/reader/']

const ownScript = (given: string): string => {
  const url = new URL(given, self.location.href)
  if (url.origin !== self.location.origin || !allowed.some((path) => (path.endsWith('/') ? url.pathname.startsWith(path) : url.pathname === path)))
    throw new TypeError(`not a script of this app: ${given}`)
  return url.href
}

/**
 * Makes the one policy that the content policy names (`trusted-types bathkeeper`), once for a page's life: a second policy of the same
 * name is refused by the browser. The result is typed as text, which is what every taker of a script's address declares.
 */
export const createTrustScript = (): ((url: string) => string) => {
  const factory = (globalThis as { trustedTypes?: Factory }).trustedTypes
  if (!factory) return ownScript
  const policy = factory.createPolicy(policyName, { createScriptURL: ownScript })
  return (url) => policy.createScriptURL(url)
}
