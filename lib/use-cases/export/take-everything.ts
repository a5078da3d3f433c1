import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { dayIn } from '@/lib/core/shop/calendar'
import { exportProgress, startExport, type ExportProgress } from '@/lib/data/backup/start-export'
import { db } from '@/lib/data/db'
import { shopOf } from '@/lib/data/shop'
import { write, type Moment } from '@/lib/data/write'

export type Everything = { readonly name: string; readonly archive: ReadableStream<Uint8Array> }

/** All of the shop for other programs, as one archive that is made as it is read. That it was taken is on record. */
export async function takeEverything(actor: Actor, { now }: Moment, start = startExport): Promise<Everything> {
  must(allow(actor, 'export.take'))
  const { timeZone } = await shopOf(await db())
  const archive = start()
  await write(actor, { now }, async ({ audit }) => audit({ action: 'export.everything', subjectId: 'all' }))
  return { name: `everything-${dayIn(timeZone, now)}.tar.gz`, archive }
}

/** How far it is; null: nothing is being taken along. */
export function exportHasCome(actor: Actor): ExportProgress | null {
  must(allow(actor, 'export.take'))
  return exportProgress()
}
