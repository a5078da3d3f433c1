import { z } from 'zod'
import { requiredFigure } from './figure'

const message = 'Enter how far inside, 0 if right at the edge.'

export const cornerInsetSchema = z.object({
  edge: requiredFigure('cornerInset', message),
  end: requiredFigure('cornerInset', message),
})
export type SetCornerInset = z.output<typeof cornerInsetSchema>
