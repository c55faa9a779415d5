/** What is known of the strip, for the head of its file. Texts without quotes of both kinds. */
export interface CgatsHead {
  originator: string
  descriptor: string
  /** ISO 8601 with offset. */
  created: string
  instrumentation?: string
  material?: string
  batch?: string
}

const quoted = (text: string): string => {
  const plain = text.replaceAll(/[\r\n\t]+/g, ' ')
  if (!plain.includes('"')) return `"${plain}"`
  // The format has no way to write both kinds of quotes in one string.
  return plain.includes("'") ? `"${plain.replaceAll('"', "'")}"` : `'${plain}'`
}

/**
 * A strip as CGATS.17 text, which `readCgats` reads back to the same names and digits. Lines end in CR LF.
 *
 * @example writeCgats(head, [{ name: 'step 5', keyed: '0.31' }]) // … BEGIN_DATA 1 "step 5" 0.31 END_DATA
 */
export const writeCgats = ({ originator, descriptor, created, instrumentation, material, batch }: CgatsHead, steps: readonly { name: string; keyed: string }[]): string =>
  [
    'CGATS.17',
    `ORIGINATOR\t${quoted(originator)}`,
    `FILE_DESCRIPTOR\t${quoted(descriptor)}`,
    `CREATED\t${quoted(created)}`,
    ...(instrumentation ? [`INSTRUMENTATION\t${quoted(instrumentation)}`] : []),
    ...(material ? [`MATERIAL\t${quoted(material)}`] : []),
    'MEASUREMENT_GEOMETRY\t"transmission, diffuse"',
    'WEIGHTING_FUNCTION\t"name,density;value,ISO visual"',
    ...(batch ? ['KEYWORD\t"STRIP_BATCH"', `STRIP_BATCH\t${quoted(batch)}`] : []),
    'NUMBER_OF_FIELDS\t3',
    'BEGIN_DATA_FORMAT',
    'SAMPLE_ID\tSAMPLE_NAME\tD_VIS',
    'END_DATA_FORMAT',
    `NUMBER_OF_SETS\t${steps.length}`,
    'BEGIN_DATA',
    ...steps.map(({ name, keyed }, index) => `${index + 1}\t${quoted(name)}\t${keyed}`),
    'END_DATA',
    '',
  ].join('\r\n')
