import type { Actor } from '@/lib/core/access/roles'
import { allow } from '@/lib/core/access/can'
import { must } from '@/lib/core/errors'
import { addSettingsVersion } from '@/lib/data/settings-write'
import { write, type Moment } from '@/lib/data/write'
import { keptWanted, type ChangeShopWanted } from '@/lib/schemas/wanted'

/** What the benches work to where nobody says otherwise, for the heads booked from now on. */
export async function changeShopWanted(
  actor: Actor,
  { version, wanted, reason }: ChangeShopWanted,
  moment: Moment,
): Promise<{ version: number }> {
  must(allow(actor, 'settings.change'))
  return write(actor, moment, (ctx) =>
    addSettingsVersion(
      ctx,
      version,
      reason,
      (before) => ({ ...before, wanted: keptWanted(wanted) }),
      'settings.change',
    ),
  )
}
