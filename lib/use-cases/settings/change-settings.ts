import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { addSettingsVersion } from '@/lib/data/settings-write'
import { write, type Moment } from '@/lib/data/write'
import type { ChangeSettings } from '@/lib/schemas/settings'

/** A new version of the limits, for the heads booked from now on; those in house follow when they are told to. */
export async function changeSettings(
  actor: Actor,
  { version, values, reason }: ChangeSettings,
  moment: Moment,
): Promise<{ version: number }> {
  must(allow(actor, 'settings.change'))
  return write(actor, moment, (ctx) =>
    addSettingsVersion(ctx, version, reason, (before) => ({ ...before, ...values }), 'settings.change'),
  )
}
