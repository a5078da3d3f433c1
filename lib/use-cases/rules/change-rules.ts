import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { changeRules as changed } from '@/lib/core/route/change-rules'
import { checkRules } from '@/lib/core/route/rules-check'
import { addSettingsVersion } from '@/lib/data/settings-write'
import { write, type Moment } from '@/lib/data/write'
import { rulesFaultText } from '@/lib/words/rules-faults'
import type { ChangeRules } from '@/lib/schemas/rules'

/** Changes the tables of steps, once a head of every kind was seen to come through under them. */
export async function changeRules(
  actor: Actor,
  { version, change, reason }: ChangeRules,
  moment: Moment,
): Promise<{ version: number }> {
  must(allow(actor, 'settings.change'))
  return write(actor, moment, (ctx) =>
    addSettingsVersion(
      ctx,
      version,
      reason,
      (before) => {
        const rules = changed(before.rules, change)
        const fault = checkRules(rules)
        if (fault) throw new RefusedError({ code: 'invalid', message: rulesFaultText(fault) })
        return { ...before, rules }
      },
      'settings.change-steps',
    ),
  )
}
