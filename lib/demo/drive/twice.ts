import { RefusedError } from '@/lib/core/errors'
import { figureKey } from '@/lib/core/expected/types'
import type { Entry } from '@/lib/schemas/visit'

/** What is told here was read so: an unlikely figure is typed a second time when it is asked about. */
export async function twice<T>(entry: Entry, keep: (entry: Entry) => Promise<T>): Promise<T> {
  try {
    return await keep(entry)
  } catch (error) {
    if (!(error instanceof RefusedError) || error.refusal.code !== 'unlikely') throw error
    const asked = Object.keys(error.refusal.fields ?? {})
    const readings = entry.readings.map((one) =>
      asked.includes(figureKey(one.kind, one.point)) ? { ...one, again: one.text } : one,
    )
    return keep({ ...entry, readings })
  }
}
