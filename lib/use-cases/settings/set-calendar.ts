import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { currentSettings } from '@/lib/data/settings'
import { addSettingsVersion } from '@/lib/data/settings-write'
import { write, type Moment } from '@/lib/data/write'
import type { SetCalendar } from '@/lib/schemas/shop-calendar'

/** The days of the week on which the shop works, and its holidays. */
export async function setCalendar(
  actor: Actor,
  { open, closed }: SetCalendar,
  moment: Moment,
): Promise<{ version: number }> {
  must(allow(actor, 'settings.change'))
  return write(actor, moment, async (ctx) => {
    const { version } = await currentSettings(ctx.tx)
    const calendar = { openWeekdays: open, closedDays: closed }
    return addSettingsVersion(
      ctx,
      version,
      'Working days or holidays changed',
      (before) => ({ ...before, calendar }),
      'settings.change',
    )
  })
}
