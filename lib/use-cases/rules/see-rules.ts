import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import type { RouteRules } from '@/lib/core/route/rules'
import { lastChange, type LastChange } from '@/lib/data/audit-trail'
import { db } from '@/lib/data/db'
import { countBehind } from '@/lib/data/open-visits'
import { currentSettings } from '@/lib/data/settings'

export type RulesSeen = {
  readonly version: number
  readonly rules: RouteRules
  /** Heads in house whose route is made by an older version. */
  readonly behind: number
  readonly last: LastChange | null
}

/** The tables of the route as they stand. */
export async function seeRules(actor: Actor): Promise<RulesSeen> {
  must(allow(actor, 'settings.change'))
  const client = await db()
  const { version, values } = await currentSettings(client)
  return {
    version,
    rules: values.rules,
    behind: await countBehind(client, version),
    last: await lastChange(client, 'settings', String(version)),
  }
}
