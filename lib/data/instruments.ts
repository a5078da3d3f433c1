import 'server-only'
import { RefusedError } from '@/lib/core/errors'
import type { Reader } from './db'
import { mostInUse } from './in-use'
import { inUseFirst, pageOfRows, rowsOfPage } from './paging'

export async function instrumentById(reader: Reader, id: string) {
  const instrument = await reader.instrument.findUnique({ where: { id } })
  if (!instrument) throw new RefusedError({ code: 'not-found', message: 'There is no such instrument here.' })
  return instrument
}

/** A page of them by name, those in use first. */
export const listInstruments = async (reader: Reader, page: number) =>
  pageOfRows(
    await reader.instrument.findMany({ orderBy: [inUseFirst, { name: 'asc' }, { id: 'asc' }], ...rowsOfPage(page) }),
  )

/** The names of these, retired or not. */
export const instrumentNames = (reader: Reader, ids: readonly string[]) =>
  reader.instrument.findMany({ where: { id: { in: [...new Set(ids)] } }, select: { id: true, name: true } })

/** What can be picked at a step, by name. */
export const instrumentsInUse = (reader: Reader) =>
  reader.instrument.findMany({
    where: { retiredAt: null },
    orderBy: { name: 'asc' },
    take: mostInUse.instruments,
    select: { id: true, name: true, kind: true, lastCheckedOn: true },
  })
