// Made once, when version 1 of the wire was written: `npx tsx tests/server/wire-1/make.ts > tests/server/wire-1/file.json`. Never made again: what phones
// have written under version 1 must be taken in by every later server.
import { sha256 } from '../../../src/server/keys.ts'
import { digitsOf, seedText, thumbprintText } from '../../../src/wire/signed-texts.ts'
import { unsentHashed, unsentText } from '../../../src/wire/unsent-file.ts'
import { Phone } from '../phone.ts'

const phone = new Phone(() => Promise.reject(new Error('no server')))
phone.dev = '00000000000000f1' as never
phone.epoch = 'f1f1f1f1f1f1f1f1'
const thumbprint = sha256(thumbprintText(phone.jwk))
const seed = sha256(seedText({ dev: phone.dev, epoch: phone.epoch, thumbprint }))
phone.h = seed
const entries = [
  phone.entry('note', { text: 'pump hums; “Rolle 14” läuft €', about: 'general' }, 'ida'),
  phone.entry('run', { machine: 'neg-1', state: 'running', metresPerMinute: 30.48 }, 'ida'),
  phone.entry('note', { text: '', about: 'general' }, null),
  phone.entry('soundTrack', { of: 'a later version' }, null),
]
const file = { format: 'bathkeeper-unsent' as const, v: 1 as const, dev: phone.dev, epoch: phone.epoch, name: 'Phone of version 1', made: '2026-11-25T12:00:00.000+01:00', entries }
const sig = phone.sign(unsentText(sha256(unsentHashed(file))))
console.log(JSON.stringify({ key: phone.jwk, thumbprint, digits: digitsOf(thumbprint), seed, statuses: ['valid', 'valid', 'invalid', 'opaque'], file: { ...file, sig } }, null, 1))
