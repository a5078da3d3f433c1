import type { Actor } from '@/lib/core/access/roles'
import type { Station } from '@/lib/core/route/step-ids'
import { seeOpenStep } from '@/lib/use-cases/stations/see-open-step'
import { stepHref } from './step-href'

/** Where a scanned head opens: its step at this station, or its own page where it has none there. */
export async function headAtStation(actor: Actor, headId: string, station: Station | null): Promise<string> {
  const open = station === null ? null : await seeOpenStep(actor, headId, station)
  return open && station ? stepHref(station, open.visitId, open.step) : `/heads/${headId}`
}
