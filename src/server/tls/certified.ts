import { createPrivateKey, X509Certificate, type KeyObject } from 'node:crypto'
import type { Names } from './machine-names.ts'
import type { Pair } from './authority.ts'

export type CertificateFault = 'missing' | 'noCertificate' | 'noKey' | 'encryptedKey' | 'mismatch' | 'forged'

/** Certificate files that cannot be used: what is wrong, and with which file. */
export class BadCertificate extends Error {
  constructor(
    readonly fault: CertificateFault,
    readonly file: string,
    options?: ErrorOptions,
  ) {
    super(`${fault}: ${file}`, options)
    this.name = 'BadCertificate'
  }
}

const readCertificate = (pem: string, file: string): X509Certificate => {
  try {
    return new X509Certificate(pem)
  } catch (error) {
    throw new BadCertificate('noCertificate', file, { cause: error })
  }
}

const readKey = (pem: string, file: string): KeyObject => {
  if (/ENCRYPTED/.test(pem)) throw new BadCertificate('encryptedKey', file)
  try {
    return createPrivateKey(pem)
  } catch (error) {
    throw new BadCertificate('noKey', file, { cause: error })
  }
}

/** Refuses what TLS could not serve, before it is put in force: a half-written file keeps the old certificate, and stops a start with a sentence. */
export const checkPair = ({ cert, key }: Pair, files: { cert: string; key: string }): X509Certificate => {
  const certificate = readCertificate(cert, files.cert)
  if (!certificate.checkPrivateKey(readKey(key, files.key))) throw new BadCertificate('mismatch', files.key)
  return certificate
}

export const untilMs = (certificate: X509Certificate): number => Date.parse(certificate.validTo)

/** The names in a certificate, from Node's text of them: `DNS:bath.lab, IP Address:192.168.1.20`. */
export const namesOf = ({ subjectAltName = '' }: X509Certificate): Names => {
  const parts = subjectAltName.split(', ')
  const those = (mark: string): string[] => parts.filter((part) => part.startsWith(mark)).map((part) => part.slice(mark.length).replaceAll('"', '').toLowerCase())
  return { dns: those('DNS:'), addresses: those('IP Address:') }
}
