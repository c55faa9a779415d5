import type { PersonId, StationId } from '../plan/ids.ts'
import { confirmationStandsMilliseconds, type CardNeeded } from '../safety/needed.ts'
import type { CautionLine } from './sealed-dose.ts'

interface UnreadAsked {
  cautions: readonly CautionLine[]
  person: PersonId | null
  station: StationId
  now: number
}

/** Of the cards that a step of work asks for, those that this person has not confirmed here within the hour. */
export const cardsUnread = (needs: readonly CardNeeded[], { cautions, person, station, now }: UnreadAsked): CardNeeded[] =>
  needs.filter(
    (needed) =>
      person === null ||
      !cautions.some(
        ({ data, time, person: by, withdrawnBy }) =>
          !withdrawnBy && data.card === needed.card && data.version === needed.version && needed.lines.every((key) => data.lines.includes(key)) && by === person &&
          data.station === station && time <= now && now - time <= confirmationStandsMilliseconds,
      ),
  )
