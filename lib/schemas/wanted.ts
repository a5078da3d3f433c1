import { z } from 'zod'
import { wantedFaults, type WantedFault } from '@/lib/core/wanted/faults'
import {
  shopWantedKeys,
  typedWantedKeys,
  wantedFigures,
  type ShopWantedKey,
  type TypedWantedKey,
  type WantedFigures,
  type WantedKey,
} from '@/lib/core/wanted/figures'
import { typedFigure } from '@/lib/core/units/typed-figure'
import { optionalFigure, requiredText, type Figure } from './figure'
import { text } from './text'

const typedOrEmpty = (key: WantedKey) => optionalFigure(wantedFigures[key].quantity).prefault('')
type Field = ReturnType<typeof typedOrEmpty>

/** One field a key; the cast only tells the compiler that the keys put in are the keys that come out. */
const fieldsOf = <K extends WantedKey>(keys: readonly K[]) =>
  z.object(Object.fromEntries(keys.map((key) => [key, typedOrEmpty(key)])) as Record<K, Field>)

const faultMessages: Readonly<Record<WantedFault['code'], string>> = {
  'least-over-most': 'This is more than the most clearance. Check both figures.',
  'open-under-seat': 'This is more than with the valve open. Check both figures.',
  'bind-over-height': 'This is not under the installed height. Check both figures.',
  'bind-before-lift': 'The spring is solid before this lift. Check height, coil bind and lift.',
}

/** Figures of one form that cannot both be right, at the field that is told. */
function refuseFaults(fields: Readonly<Partial<Record<WantedKey, Figure | null>>>, context: z.RefinementCtx): void {
  for (const fault of wantedFaults(keptWanted(fields))) {
    context.addIssue({ code: 'custom', path: [fault.key], message: faultMessages[fault.code] })
  }
}

/** What is wanted of a job, a head or a casting; all of it may stay empty. */
export const wantedFields = fieldsOf(typedWantedKeys).superRefine(refuseFaults).prefault({})
export const shopWantedFields = fieldsOf(shopWantedKeys).superRefine(refuseFaults).prefault({})
export type WantedForm = Record<TypedWantedKey, string>
export type ShopWantedForm = Record<ShopWantedKey, string>

/** Only what was typed. */
export const keptWanted = (fields: Readonly<Partial<Record<WantedKey, Figure | null>>>): WantedFigures =>
  Object.fromEntries(Object.entries(fields).filter(([, figure]) => figure !== null && figure !== undefined))

/** What a form starts from: the figures as they were typed, '' for the rest. */
export const wantedForm = <K extends WantedKey>(keys: readonly K[], figures: WantedFigures): Record<K, string> =>
  Object.fromEntries(keys.map((key) => [key, textOf(figures[key])])) as Record<K, string>

const textOf = (figure: Figure | undefined): string => (figure ? typedFigure(figure) : '')

export const emptyWanted = (): WantedForm => wantedForm(typedWantedKeys, {})

const id = text().min(1).max(64)
const version = z.number().int()

export const changeJobWantedSchema = z.object({ jobId: id, version, wanted: wantedFields })
export type ChangeJobWanted = z.output<typeof changeJobWantedSchema>

export const changeHeadWantedSchema = z.object({ visitId: id, version, wanted: wantedFields })
export type ChangeHeadWanted = z.output<typeof changeHeadWantedSchema>

export const changeCastingWantedSchema = z.object({ castingId: id, version, wanted: wantedFields })
export type ChangeCastingWanted = z.output<typeof changeCastingWantedSchema>

export const changeShopWantedSchema = z.object({
  version,
  wanted: shopWantedFields,
  reason: requiredText('Enter the reason. It is kept with the new figures.', 400),
})
export type ChangeShopWanted = z.output<typeof changeShopWantedSchema>
