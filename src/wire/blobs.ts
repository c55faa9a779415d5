import * as z from 'zod/mini'
import { hash } from '../record/ids.ts'

/**
 * A photo goes up after the entry that names it (in `blobs`) was acknowledged: `PUT /api/v1/blob/{sha256}` with Content-Length and the
 * bytes as they are. Sending twice is harmless; `HEAD` tells whether it is there.
 */
export const largestBlobBytes = 2 << 20
export const blobTypes = ['image/jpeg', 'image/png', 'image/webp'] as const
export const blobAnswer = z.strictObject({ sha256: hash, bytes: z.number() })
export type BlobAnswer = z.infer<typeof blobAnswer>
