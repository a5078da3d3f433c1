import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { changesBetween } from '@/lib/data/audit-trail'
import { nextNumber } from '@/lib/data/counters'
import { refreshOpenVisits } from '@/lib/data/open-visits'
import { currentSettings } from '@/lib/data/settings'
import { conflictUnless, write, type Moment } from '@/lib/data/write'
import type { ChangeSettings } from '@/lib/schemas/settings'

/** A new version of the limits. Older versions stay: events and plans name the one they were made under. */
export async function changeSettings(
  actor: Actor,
  input: ChangeSettings,
  moment: Moment,
): Promise<{ version: number }> {
  must(allow(actor, 'settings.change'))
  return write(actor, moment, async (w) => {
    await nextNumber(w.tx, 'settings changed') // one after the other, on every database
    const before = await currentSettings(w.tx)
    conflictUnless({ count: before.version === input.version ? 1 : 0 }, 'the limits')
    const version = before.version + 1
    const { values, reason } = input
    await w.tx.settings.create({
      data: { version, values: JSON.stringify(values), reason, createdAt: w.now, byId: actor.personId },
    })
    await refreshOpenVisits(w.tx, {}, w.now)
    w.audit({
      action: 'change-settings',
      subject: 'settings',
      subjectId: String(version),
      changes: { ...changesBetween(before.values, values), reason },
    })
    return { version }
  })
}
