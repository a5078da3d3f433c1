import { RefusedError } from '@/lib/core/errors'
import { flowConditionFields } from '@/lib/core/readings/flow-conditions'
import { parseFigure } from '@/lib/core/units/parse-figure'
import type { Entry } from '@/lib/dossier/add-readings'

/** A figure in cfm means nothing without the pressure it was read at; a figure that cannot be read is no condition. */
export function refuseFlowWithoutPressure({ readings, conditions }: Pick<Entry, 'readings' | 'conditions'>): void {
  const flowed = readings.some(({ kind, text, notTaken }) => kind === 'flow' && notTaken === null && text !== '')
  if (!flowed) return
  const fields = Object.fromEntries(
    flowConditionFields.flatMap(({ key, quantity }) => {
      const typed = (conditions[key] ?? '').trim()
      if (typed === '') return key === 'testPressureInH2O' ? [[key, 'Enter the test pressure.']] : []
      const parsed = quantity ? parseFigure(typed, quantity) : null
      return parsed === null || parsed.ok ? [] : [[key, parsed.refusal.message]]
    }),
  )
  const [message] = Object.values(fields)
  if (message !== undefined) throw new RefusedError({ code: 'owed', message, fields })
}
