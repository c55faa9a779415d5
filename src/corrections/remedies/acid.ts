import type { Builder } from '../row.ts'
import { isAcid } from '../nature.ts'
import { say } from '../say.ts'
import { isFixing } from '../bath-now.ts'
import { doseRemedy } from './dose.ts'
import { phDose } from './ph.ts'

/** Acid that brings a stop or a fixing bath down. What the plan lets into the bath is offered, or refused with its reason. */
export const acid: Builder = (situation, { source }) =>
  situation.plan.materials
    .filter((material) => material.for.includes(situation.station.id) && isAcid(material))
    .map((material) =>
      doseRemedy(situation, material, {
        code: 'acid',
        says: say('acidDose', { material: material.id }),
        how: [
          say('exhaustOn'),
          say('acidIntoWater'),
          say('slowlyAtReturn', { minutes: isFixing(situation.station) ? 10 : 5 }),
          say('stopAtCloudOrSmell'),
        ],
        wait: 'pH',
        source,
        compute: (factor) => phDose(situation, material, factor),
      }),
    )
    .filter((remedy) => remedy !== undefined)
