'use server'
import { endASessionSchema } from '@/lib/schemas/person'
import { endASession } from '@/lib/use-cases/people/end-a-session'
import { defineAction } from '@/lib/web/define-action'

export const endASessionAction = defineAction('endASession', endASessionSchema, endASession)
