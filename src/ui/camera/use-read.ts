import { useEffect, useState } from 'preact/hooks'
import type { CheckId } from '../../plan/ids.ts'
import { useApp } from '../app-context.ts'
import { read as readSchema, type Read } from './read.ts'

const key = 'read'

export interface UseRead {
  read: Read | undefined
  take(read: Read): void
}

/**
 * What the camera read of this check, as long as something is keyed: an empty pad begins anew. Kept like the half-keyed number, so that an
 * entry still says how it came about after the battery died or an undo.
 */
export const useRead = (check: CheckId, isEmpty: boolean): UseRead => {
  const { phone } = useApp()
  const [read, setRead] = useState<Read>()
  useEffect(() => {
    if (isEmpty) return
    void phone.drafts.get(key).then((kept) => {
      const { of, ...it } = (kept ?? {}) as { of?: unknown }
      const parsed = of === check ? readSchema.safeParse(it) : undefined
      if (parsed?.success) setRead(parsed.data as Read)
    })
  }, [])
  useEffect(() => {
    if (!isEmpty || !read) return
    setRead(undefined)
    void phone.drafts.remove(key)
  }, [isEmpty])
  return {
    read,
    take: (next) => {
      setRead(next)
      void phone.drafts.put(key, { of: check, ...next })
    },
  }
}
