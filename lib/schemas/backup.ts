import { z } from 'zod'

/** Nothing is asked: there is one shop. */
export const startBackupSchema = z.object({})
