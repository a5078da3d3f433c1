import { z } from 'zod'
import { readingKinds } from '@/lib/core/readings/types'
import type { Cell } from '@/lib/core/route/cells'
import { causes } from '@/lib/core/route/do-again'
import type { StepRef } from '@/lib/core/route/keys'
import { ownConditionIds } from '@/lib/core/route/own-conditions'
import type { OwnStep, RouteRules, StepChange } from '@/lib/core/route/rules'
import { isOwnStep, isWorkId, stations, type OwnStepId } from '@/lib/core/route/step-ids'
import { defaultShopSettings, type ShopLimits, type ShopSettings } from '@/lib/core/shop/settings'
import { usualCalendar } from '@/lib/core/shop/open-calendar'
import { usualValveLists } from '@/lib/core/valve-sheet/lists'
import { storedObject, type Fields } from './stored-json'
import { storedWantedFigures } from './wanted'

const stepRef = z.custom<StepRef>((ref) => typeof ref === 'string' && ref !== 'valves' && isWorkId(ref), 'no such step')
const cell = z.enum(['●', '○', '◐', '–'] satisfies Cell[])
const cells = z.tuple([cell, cell, cell, cell])
const station = z.enum(stations)

const stepChange = z.object({
  label: z.string().optional(),
  station: station.optional(),
  cells: cells.optional(),
  waitsFor: z.array(stepRef).optional(),
  undoneBy: z.array(z.enum(causes)).optional(),
} satisfies Fields<StepChange>)

const ownStep = z.object({
  id: z.custom<OwnStepId>((id) => typeof id === 'string' && isOwnStep(id), 'no such step'),
  label: z.string(),
  station,
  cells,
  when: z.enum(['', ...ownConditionIds]),
  limitIn: z.number().nullable(),
  after: stepRef,
  waitsFor: z.array(stepRef),
  undoneBy: z.array(z.enum(causes)),
  owes: z.array(z.enum(readingKinds)),
  machining: z.boolean(),
  retired: z.boolean(),
} satisfies Fields<OwnStep>)

const rules = z.object({
  stationNames: z.partialRecord(station, z.string()).default({}),
  changed: z.partialRecord(stepRef, stepChange).default({}),
  own: z.array(ownStep).default([]),
} satisfies Fields<RouteRules>)

const {
  rules: _rules,
  cornerInset: _inset,
  wanted: _wanted,
  valveLists: _lists,
  calendar: _calendar,
  ...limits
} = defaultShopSettings
const limitFields = Object.fromEntries(
  Object.entries(limits).map(([key, usual]) => [key, z.number().default(usual)]),
) as Record<keyof ShopLimits, z.ZodDefault<z.ZodNumber>>

/** Defaults fill what a version that was written before a setting existed does not have. */
const settings = z.object({
  ...limitFields,
  rules: rules.default({ stationNames: {}, changed: {}, own: [] }),
  cornerInset: z.object({ edgeIn: z.number(), endIn: z.number() }).nullable().default(null),
  wanted: storedWantedFigures.default({}),
  valveLists: z
    .object({ shimsIn: z.array(z.number()).readonly(), seatAngles: z.array(z.string()).readonly() })
    .default(usualValveLists),
  calendar: z
    .object({ openWeekdays: z.array(z.number()).readonly(), closedDays: z.array(z.string()).readonly() })
    .default(usualCalendar),
} satisfies Fields<ShopSettings>) satisfies z.ZodType<ShopSettings>

export const settingsValues = storedObject<ShopSettings>('Settings.values', settings)
