import { z } from 'zod'
import { isText } from '@/lib/core/plain-text'

/** Every text that comes from outside begins here. */
export const text = () =>
  z.string().refine(isText, 'This contains characters that cannot be kept. Delete it and type it again.')
