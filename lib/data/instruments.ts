import 'server-only'
import { RefusedError } from '@/lib/core/errors'
import type { Reader } from './db'

export async function instrumentById(reader: Reader, id: string) {
  const instrument = await reader.instrument.findUnique({ where: { id } })
  if (!instrument) throw new RefusedError({ code: 'not-found', message: 'There is no such instrument here.' })
  return instrument
}

/** By name, retired ones too. */
export const listInstruments = (reader: Reader) => reader.instrument.findMany({ orderBy: { name: 'asc' } })

/** What can be picked at a step, by name. */
export const instrumentsInUse = (reader: Reader) =>
  reader.instrument.findMany({
    where: { retiredAt: null },
    orderBy: { name: 'asc' },
    select: { id: true, name: true, lastCheckedOn: true },
  })
