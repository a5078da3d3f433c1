import 'server-only'
import { RefusedError } from '@/lib/core/errors'
import type { ShopSettings } from '@/lib/core/shop/settings'
import { changesBetween } from './audit-trail'
import { nextNumber } from './counters'
import { currentSettings } from './settings'
import { settingsValues } from './stored/settings'
import { conflictUnless, type Write } from './write'

/** A new version of limits and tables; refused when somebody made one since `version` was on the page. Older ones stay. */
export async function addSettingsVersion(
  ctx: Write,
  version: number,
  reason: string,
  change: (before: ShopSettings) => ShopSettings,
  action: 'settings.change' | 'settings.change-steps',
): Promise<{ version: number }> {
  await nextNumber(ctx.tx, 'settings changed') // one after the other, on every database
  const before = await currentSettings(ctx.tx)
  conflictUnless({ count: before.version === version ? 1 : 0 }, 'the limits and steps')
  const values = change(before.values)
  const changes = changesBetween(before.values, values)
  if (Object.keys(changes).length === 0) {
    throw new RefusedError({ code: 'wrong-state', message: 'Nothing changed. These settings are in use already.' })
  }
  const next = before.version + 1
  await ctx.tx.settings.create({
    data: {
      version: next,
      values: settingsValues.write(values),
      reason,
      createdAt: ctx.now,
      byId: ctx.actor.personId,
    },
  })
  ctx.audit({
    action,
    subjectId: String(next),
    changes: { ...changes, reason },
  })
  return { version: next }
}
