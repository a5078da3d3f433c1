import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { currentSettings } from '@/lib/data/settings'
import { addSettingsVersion } from '@/lib/data/settings-write'
import { write, type Moment } from '@/lib/data/write'
import type { SetValveLists } from '@/lib/schemas/valve-lists'

/** The shims and the seat angles that are picked from at the valves. */
export async function setValveLists(
  actor: Actor,
  { shims, angles }: SetValveLists,
  moment: Moment,
): Promise<{ version: number }> {
  must(allow(actor, 'settings.change'))
  return write(actor, moment, async (ctx) => {
    const { version } = await currentSettings(ctx.tx)
    const valveLists = { shimsIn: shims, seatAngles: angles }
    return addSettingsVersion(
      ctx,
      version,
      'Shims or seat angles changed',
      (before) => ({ ...before, valveLists }),
      'settings.change',
    )
  })
}
