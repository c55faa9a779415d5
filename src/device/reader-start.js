// The first lines of the reader's worker, a classic script as it stands. Under Trusted Types the engine's own importScripts, which takes
// plain text, is refused; this worker's default policy lets exactly the reader's files of this site through. The address of the
// engine's script stands after the # of this one's.
const own = (given) => {
  const url = new URL(given, self.location.origin)
  if (url.origin !== self.location.origin || !url.pathname.startsWith('/reader/')) throw new TypeError(`not a file of the reader: ${given}`)
  return url.href
}
if (self.trustedTypes) self.trustedTypes.createPolicy('default', { createScriptURL: own })
importScripts(own(self.location.hash.slice(1)))
