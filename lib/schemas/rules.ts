import { z } from 'zod'
import type { RulesChange } from '@/lib/core/route/change-rules'
import { causes } from '@/lib/core/route/do-again'
import type { StepRef } from '@/lib/core/route/keys'
import { ownConditionIds } from '@/lib/core/route/own-conditions'
import { isOwnStep, isWorkId, stations, type OwnStepId, type Station } from '@/lib/core/route/step-ids'
import type { Cell } from '@/lib/core/route/cells'
import { ownOwes } from '@/lib/core/route/own-owes'
import { optionalFigure, requiredText, words } from './figure'
import { text } from './text'

/** Needed when the change takes work away, which only the tables before it can tell. */
const reason = words(400)
/** What was shown of this very change before; '' before it was. */
const seen = text().max(80).prefault('')
const version = z.number().int()

/** A step as the tables name it: flow runs by their place in the job. */
const stepRef = z.custom<StepRef>(
  (ref) => typeof ref === 'string' && ref !== 'valves' && isWorkId(ref),
  'This step does not exist. Pick another.',
)
const cell = z.enum(['●', '○', '◐', '–'] satisfies Cell[])
const cells = z.tuple([cell, cell, cell, cell])
const station = z.enum(stations)
const label = requiredText('Enter a name for the step.', 60)
const asked = { waitsFor: z.array(stepRef), undoneBy: z.array(z.enum(causes)) }

export const nameStationsSchema = z
  .object({
    version,
    names: z.object(
      Object.fromEntries(stations.map((id) => [id, requiredText('Enter a name for the station.', 60)])) as Record<
        Station,
        z.ZodString
      >,
    ),
    reason,
    seen,
  })
  .transform(({ names, ...rest }) => ({ ...rest, change: { kind: 'stations', names } satisfies RulesChange }))

export const changeStepSchema = z
  .object({ version, ref: stepRef, label, station, cells, ...asked, reason, seen })
  .transform(({ ref, label: name, station: at, cells: when, waitsFor, undoneBy, ...rest }) => ({
    ...rest,
    change: {
      kind: 'step',
      ref,
      to: { label: name, station: at, cells: when, waitsFor, undoneBy },
    } satisfies RulesChange,
  }))

export const ownStepSchema = z
  .object({
    version,
    /** '' for one that is added. */
    id: z.union([z.literal(''), z.custom<OwnStepId>((id) => typeof id === 'string' && isOwnStep(id))]),
    label,
    station,
    cells,
    when: z.enum(['', ...ownConditionIds]),
    limit: optionalFigure('depth'),
    after: stepRef,
    ...asked,
    owes: z.array(z.enum(ownOwes)),
    machining: z.boolean(),
    retired: z.boolean(),
    reason,
    seen,
  })
  .transform(({ version: from, reason: why, seen: shown, id, limit, ...step }) => ({
    version: from,
    reason: why,
    seen: shown,
    change: {
      kind: 'own',
      step: { ...step, id: id === '' ? null : id, limitIn: limit?.value ?? null },
    } satisfies RulesChange,
  }))

/** Back to the tables as they stood under an earlier version of the settings. */
export const restoreRulesSchema = z.object({ version, to: version.min(0), reason, seen })
export type RestoreRules = z.output<typeof restoreRulesSchema>

export type SeenChange = ChangeRules & { readonly seen: string }

export type ChangeRules = {
  readonly version: number
  readonly change: RulesChange
  readonly reason: string
}

export const applyRulesSchema = z.object({
  version,
  visitIds: z.array(z.uuid()).min(1, 'Pick at least one head.'),
})
export type ApplyRules = z.output<typeof applyRulesSchema>
