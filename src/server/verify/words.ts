import type { BadLink, Walked } from './fault.ts'

const what: Readonly<Record<BadLink['fault'], string>> = {
  text: 'its text is no entry, or says something else than the columns beside it',
  hash: 'its text does not give its hash: the text or the hash was changed',
  device: 'its device is unknown, or the device’s key was changed',
  signature: 'its signature is not that of its device',
  chain: 'it does not follow on this device’s entry before it: one was changed, removed or put in',
  link: 'it does not follow on the record’s entry before it: one was changed, removed, put in or moved',
  head: 'the record ends here, and its head says otherwise: the end was cut off, or entries were added',
  reach: 'this is the device’s last entry, and the list of devices says otherwise',
  witness: 'this server signed another head here, which a phone has kept: the record was put back or worked out anew',
  plan: 'the plan kept beside this entry is not the one in it',
  photo: 'a photo’s bytes do not give its name',
}

const placeOf = ({ gseq, dev, seq }: BadLink): string =>
  [gseq === undefined ? '' : `entry ${gseq} of the record`, dev === undefined ? '' : `device ${dev}`, seq === undefined ? '' : `its entry ${seq}`].filter(Boolean).join(', ')

export const walkedText = (walked: Walked): string => {
  if (!walked.ok)
    return [
      `Not whole. First bad link: ${placeOf(walked) || 'a photo'}: ${what[walked.fault]}.`,
      ...(walked.found === undefined ? [] : [`  found   ${walked.found}`]),
      ...(walked.wanted === undefined ? [] : [`  wanted  ${walked.wanted}`]),
    ].join('\n')
  const statuses = [...walked.byStatus].sort().map(([status, count]) => `${count} ${status}`).join(', ')
  return [
    `Whole: ${walked.entries} entries${statuses ? ` (${statuses})` : ''} of ${walked.devices} devices, ${walked.asides} kept aside, ${walked.photos} photos.`,
    `Head ${walked.gseq} ${walked.sh}, borne out by ${walked.witnesses} heads in sign-offs and on phones.`,
  ].join('\n')
}
