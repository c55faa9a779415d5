import type { Constraints } from '../../server/tls/name-constraints.ts'

export const certificateUsage = `Makes an authority of the laboratory's own and a certificate for this server, in the data folder (BATHKEEPER_DATA).

  npm run certificate                            for the names and addresses that this machine has now
  npm run certificate -- bath.lab 10.0.4.20      for these besides
  npm run certificate -- 10.0.4.0/24             for whatever address of this network the machine may get later
  npm run certificate -- --new [names …]         another authority: the old one is put aside, and every phone must trust the new one

Run again without names, it only makes the server's certificate anew; phones notice nothing.`

export const badName = (name: string): string => `${JSON.stringify(name)} is no host name, address or network. Nothing was touched.\n\n${certificateUsage}`

export const authorityKept = ({ dns, networks }: Constraints): string =>
  [
    `There is an authority already, and it is kept to ${[...dns, ...networks.map(({ text, bits }) => `${text}/${bits}`)].join(', ')}.`,
    'Nothing was touched. For other names make another one with --new; every phone must then trust that one.',
  ].join(' ')

export const keyElsewhere = (file: string): string =>
  `The authority's key is not there, so nothing can be renewed. Nothing was touched; put ${file} back, or make another authority with --new (every phone must then trust that one).`

const day = (date: Date): string => date.toISOString().slice(0, 10)

/** Steps on phones and desks, from memory: menus move between versions. */
const phoneSteps = (address: string): string =>
  `On each phone and desk, once. Open ${address}/ca.pem, go past the warning this one time, and compare the fingerprint with the one above before trusting.

  iPhone, iPad   in Safari; allow the profile; Settings > General > VPN & Device Management > install it;
                 then Settings > General > About > Certificate Trust Settings > switch it on in full
  Android        save the file; Settings > Security > Encryption & credentials > Install a certificate > CA certificate
  Windows        open the file > Install Certificate > Current User > Trusted Root Certification Authorities
  macOS          open the file in Keychain Access > the certificate > Trust > Always Trust
  Linux, Chrome  certutil -d sql:$HOME/.pki/nssdb -A -t C,, -n bathkeeper -i bathkeeper-ca.pem
  Firefox        Settings > Privacy & Security > Certificates > View Certificates > Authorities > Import

Close the browser, open ${address}: no warning may be left. With a warning clicked away the app seems to work and is not there offline.`

export const authorityMade = (it: {
  folder: string
  fingerprint: string
  names: readonly string[]
  until: { authority: Date; leaf: Date }
  address: string
}): string =>
  `The authority and the server's certificate are in ${it.folder}

  Fingerprint of the authority (SHA-256)
  ${it.fingerprint.slice(0, 47)}
  ${it.fingerprint.slice(48)}

  for             ${it.names.join(', ')}
  authority until ${day(it.until.authority)}
  certificate to  ${day(it.until.leaf)}; the server renews it by itself

The next start of the server uses it; one that already serves with this authority takes it up within a minute. authority-key.pem never leaves this machine:
who has it can pass for this server. Keep a copy of the folder with the backups.

${phoneSteps(it.address)}`
