'use server'
import { RefusedError } from '@/lib/core/errors'
import { confirmPasswordSchema } from '@/lib/schemas/person'
import { confirmPassword } from '@/lib/use-cases/people/confirm-password'
import { defineAction } from '@/lib/web/define-action'
import { sessionIdOfRequest } from '@/lib/web/require-actor'

/** The password once more: it holds for ten minutes, in this session. */
export const confirmPasswordAction = defineAction(
  'confirmPassword',
  confirmPasswordSchema,
  async (actor, input, moment) => {
    const sessionId = await sessionIdOfRequest()
    if (sessionId === null) throw new RefusedError({ code: 'not-signed-in', message: 'You are signed out.' })
    return confirmPassword(actor, { ...input, sessionId }, moment)
  },
)
