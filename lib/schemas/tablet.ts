import { z } from 'zod'
import { stations } from '@/lib/core/route/step-ids'
import { requiredText } from './figure'
import { text } from './text'

const tabletFields = {
  name: requiredText('Enter a name for the tablet, such as “Tablet at the mill”.', 60),
  station: z.enum(stations, 'Choose a station.'),
}

export const makeTabletCodeSchema = z.object(tabletFields)
export const changeTabletSchema = z.object({ tabletId: text(), version: z.number().int(), ...tabletFields })
export const revokeTabletSchema = z.object({ tabletId: text() })
export const enrolTabletSchema = z.object({
  code: text().trim().min(1, 'Enter the code.').max(40, 'The code has eight letters and digits.'),
})

export type MakeTabletCode = z.output<typeof makeTabletCodeSchema>
export type ChangeTablet = z.output<typeof changeTabletSchema>
export type RevokeTablet = z.output<typeof revokeTabletSchema>
export type EnrolTablet = z.output<typeof enrolTabletSchema>
