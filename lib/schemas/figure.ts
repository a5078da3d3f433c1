import { z } from 'zod'
import { parseFigure } from '@/lib/core/units/parse-figure'
import type { Quantity } from '@/lib/core/units/quantities'
import { text } from './text'

/** A figure as it is kept: value in the core's unit, the text as typed, the unit typed. */
export type Figure = { readonly value: number; readonly text: string; readonly unit: string }

function read(text: string, quantity: Quantity, context: z.RefinementCtx): Figure {
  const parsed = parseFigure(text, quantity)
  if (parsed.ok) return { value: parsed.value.value, text: parsed.value.text, unit: parsed.value.unit }
  context.addIssue({ code: 'custom', message: parsed.refusal.message })
  return z.NEVER
}

/** A typed figure that may be left empty: null. */
export const optionalFigure = (quantity: Quantity) =>
  text()
    .trim()
    .transform((text, context) => (text === '' ? null : read(text, quantity, context)))

/** A typed figure that must be there. */
export const requiredFigure = (quantity: Quantity, message: string) =>
  text()
    .trim()
    .min(1, message)
    .transform((text, context) => read(text, quantity, context))

export const words = (most = 200) => text().trim().max(most, `At most ${most} characters.`)
export const requiredText = (message: string, most = 200) => words(most).min(1, message)

/** A day of the calendar, "2026-03-14"; '' → null. */
export const optionalDay = text()
  .trim()
  .regex(/^(\d{4}-\d{2}-\d{2})?$/, 'Pick a day.')
  .transform((day) => (day === '' ? null : day))
