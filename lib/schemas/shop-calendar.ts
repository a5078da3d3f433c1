import { z } from 'zod'
import { parseClosedDays } from '@/lib/core/shop/open-calendar'
import { words } from './figure'

const weekdays = ['0', '1', '2', '3', '4', '5', '6'] as const

export const calendarSchema = z.object({
  open: z
    .array(z.enum(weekdays))
    .min(1, 'Choose at least one day of the week.')
    .transform((days) => days.map(Number).sort()),
  closed: words(6000).transform((text, ctx) => {
    const parsed = parseClosedDays(text)
    if (parsed.ok) return parsed.value
    ctx.addIssue({ code: 'custom', message: parsed.refusal.message })
    return z.NEVER
  }),
})
export type SetCalendar = z.output<typeof calendarSchema>
