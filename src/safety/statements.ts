/**
 * What each code of a label means, in our own words. Codes are text, looked up here where they are known and shown bare where not: the UN's list
 * changes from revision to revision, and labels in use carry old codes beside new ones (P310 to P315 became P316 to P319 with the ninth).
 *
 * Every wording was held against the statement of that code in the UN's list (GHS annex 3, ninth revision 2021, as quoted by label-text
 * pages and code tables; the codes P316 to P319 from memory).
 */
export interface Statement {
  code: string
  means: string
  /** Not in the UN's list: a supplement of one region, or one region's way of writing a UN code. */
  region?: 'European'
}

const un = (code: string, means: string): Statement => ({ code, means })
const european = (code: string, means: string): Statement => ({ code, means, region: 'European' })

const hazards: readonly Statement[] = [
  un('H220', 'Gas that catches fire very easily.'),
  un('H224', 'Liquid whose vapour catches fire extremely easily.'),
  un('H225', 'Liquid whose vapour catches fire very easily.'),
  un('H226', 'Liquid whose vapour can catch fire.'),
  un('H272', 'Feeds a fire: it gives off oxygen.'),
  un('H290', 'Can eat into metals.'),
  un('H301', 'Poisonous if swallowed.'),
  un('H302', 'Harmful if swallowed.'),
  un('H304', 'Can kill if swallowed and it runs into the airways.'),
  un('H311', 'Poisonous through the skin.'),
  un('H312', 'Harmful through the skin.'),
  un('H314', 'Burns the skin severely and damages the eyes.'),
  un('H315', 'Irritates the skin.'),
  un('H317', 'Can make the skin allergic.'),
  un('H318', 'Damages the eyes seriously.'),
  un('H319', 'Irritates the eyes seriously.'),
  un('H330', 'Can kill if breathed in.'),
  un('H331', 'Poisonous if breathed in.'),
  un('H332', 'Harmful if breathed in.'),
  un('H334', 'Breathed in, it can bring on allergy, asthma or trouble with breathing.'),
  un('H335', 'Can irritate the airways.'),
  un('H336', 'Can make drowsy or dizzy.'),
  un('H340', 'Can cause inheritable damage to the genes.'),
  un('H341', 'Suspected of causing inheritable damage to the genes.'),
  un('H350', 'Can cause cancer.'),
  un('H351', 'Suspected of causing cancer.'),
  un('H360', 'Can harm fertility or the unborn child.'),
  un('H361', 'Suspected of harming fertility or the unborn child.'),
  un('H372', 'Damages organs when taken in again and again or for long.'),
  un('H373', 'Can damage organs when taken in again and again or for long.'),
  un('H400', 'Very poisonous to life in water.'),
  un('H410', 'Very poisonous to life in water, for a long time.'),
  un('H411', 'Poisonous to life in water, for a long time.'),
  un('H412', 'Harmful to life in water, for a long time.'),
  un('H420', 'Harms people and nature by destroying ozone high in the air.'),
  european('H360D', 'Can harm the unborn child.'),
  european('H360F', 'Can harm fertility.'),
  european('H360FD', 'Can harm fertility, and can harm the unborn child.'),
  european('H361d', 'Suspected of harming the unborn child.'),
  european('EUH019', 'Can form explosive peroxides.'),
  european('EUH031', 'Acid frees a poisonous gas from it.'),
  european('EUH032', 'Acid frees a very poisonous gas from it.'),
  european('EUH208', 'Holds a little of a substance that makes allergic: it can bring on a reaction.'),
  european('EUH066', 'Repeated contact can leave the skin dry or cracked.'),
]

const precautions: readonly Statement[] = [
  un('P201', 'Get special instructions before using it.'),
  un('P202', 'Do not handle it before every safety precaution has been read and understood.'),
  un('P203', 'Get, read and follow all safety instructions before using it.'),
  un('P210', 'Keep away from heat, hot surfaces, sparks, open flames and whatever else could ignite it. No smoking.'),
  un('P220', 'Keep away from clothing and whatever else can burn.'),
  un('P233', 'Keep the container tightly closed.'),
  un('P240', 'Earth and bond the container and what receives from it.'),
  un('P241', 'Use explosion-proof electrical, ventilating and lighting equipment.'),
  un('P243', 'Guard against static discharge.'),
  un('P260', 'Do not breathe its dust, fume, gas, mist, vapour or spray.'),
  un('P261', 'Avoid breathing its dust, fume, gas, mist, vapour or spray.'),
  un('P264', 'Wash hands and exposed skin thoroughly after handling it.'),
  un('P265', 'Do not touch the eyes.'),
  un('P270', 'Do not eat, drink or smoke while using it.'),
  un('P271', 'Use only outdoors or where the air is well changed.'),
  un('P272', 'Contaminated work clothing stays at the workplace.'),
  un('P273', 'Do not let it into the environment.'),
  un('P280', 'Wear protective gloves, clothing, and eye or face protection.'),
  un('P284', 'Wear breathing protection where the air is not changed enough.'),
  un('P301+P310', 'If swallowed: call a poison centre or a doctor at once.'),
  un('P301+P312', 'If swallowed: call a poison centre or a doctor if unwell.'),
  un('P301+P312+P330', 'If swallowed: call a poison centre or a doctor if unwell. Rinse the mouth.'),
  un('P301+P330+P331', 'If swallowed: rinse the mouth; do not cause vomiting.'),
  un('P302+P352', 'If on skin: wash with plenty of water.'),
  un('P303+P361+P353', 'If on skin or hair: take off all contaminated clothing at once; rinse the skin with water.'),
  un('P304+P340', 'If breathed in: bring the person to fresh air and keep them comfortable for breathing.'),
  un('P305+P351+P338', 'If in the eyes: rinse carefully with water for several minutes; take out contact lenses if that is easy; go on rinsing.'),
  un('P308+P313', 'If exposed or concerned: get medical advice.'),
  un('P310', 'Call a poison centre or a doctor at once.'),
  un('P311', 'Call a poison centre or a doctor.'),
  un('P312', 'Call a poison centre or a doctor if unwell.'),
  un('P313', 'Get medical advice.'),
  un('P314', 'Get medical advice if unwell.'),
  un('P316', 'Get emergency medical help at once.'),
  un('P317', 'Get medical help.'),
  un('P318', 'If exposed or concerned: get medical advice.'),
  un('P319', 'Get medical help if unwell.'),
  un('P333+P313', 'If the skin is irritated or breaks out in a rash: get medical advice.'),
  un('P337+P313', 'If the eyes stay irritated: get medical advice.'),
  un('P391', 'Collect what was spilled.'),
  un('P403+P233', 'Store where the air is well changed, tightly closed.'),
  un('P403+P235', 'Store where the air is well changed, and keep cool.'),
  un('P405', 'Store locked up.'),
  un('P501', 'Dispose of contents and container as local rules say.'),
  un('P502', 'Ask maker or supplier about recovery or recycling.'),
]

const byCode: ReadonlyMap<string, Statement> = new Map([...hazards, ...precautions].map((it) => [it.code, it]))

/**
 * What a code means. A joined hazard code (`H301+H311`) is read part by part, since each part is a statement of its own; a joined precaution is
 * one sentence and is looked up whole. None where this version does not know the code: it is then shown bare.
 */
export const statementsOf = (code: string): readonly Statement[] => {
  const known = byCode.get(code)
  if (known) return [known]
  const parts = code.startsWith('H') ? code.split('+').map((part) => byCode.get(part)) : []
  return parts.every((part) => part !== undefined) ? parts : []
}

export const knownCodes: readonly string[] = [...byCode.keys()]
