import { useState } from 'preact/hooks'
import type { DataOf } from '../../record/kinds.ts'
import type { CardNeeded } from '../../safety/needed.ts'
import { useSaving, type Saving } from '../saving.ts'

export interface HeldLines {
  isHeld(needed: CardNeeded, line: string): boolean
  hold(needed: CardNeeded, line: string): Promise<void>
  saving: Saving
}

/** The lines of cautions, held one by one; a card is kept as an entry once all of its own were. `about`: what it was read for. */
export const useHeldLines = (about: Omit<DataOf<'caution'>, 'card' | 'version' | 'lines'>): HeldLines => {
  const saving = useSaving()
  const [held, setHeld] = useState<ReadonlySet<string>>(new Set())
  const nameOf = ({ card }: CardNeeded, line: string): string => `${card}/${line}`
  return {
    saving,
    isHeld: (needed, line) => held.has(nameOf(needed, line)),
    hold: async (needed, line) => {
      const now = new Set(held).add(nameOf(needed, line))
      setHeld(now)
      const { card, version, lines } = needed
      if (!lines.every((key) => now.has(nameOf(needed, key)))) return
      // The card before it may still be on its way to the disk: nobody holds a line twice for that.
      if (!(await saving.saveInTurn('caution', { card, version, ...about, lines: [...lines] }))) setHeld((all) => new Set([...all].filter((key) => key !== nameOf(needed, line))))
    },
  }
}
