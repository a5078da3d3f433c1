'use server'
import { openHoldSchema, secondCheckSchema } from '@/lib/schemas/visit'
import { cornerInsetSchema } from '@/lib/schemas/corner-inset'
import { openHold } from '@/lib/use-cases/holds/open-hold'
import { setCornerInset } from '@/lib/use-cases/settings/set-corner-inset'
import { secondCheck } from '@/lib/use-cases/visits/second-check'
import { defineAction } from '@/lib/web/define-action'

/** What needs the server at once; all else that is done at a station goes through the outbox (`_app/use-deeds.ts`). */
export const secondCheckAction = defineAction('secondCheck', secondCheckSchema, secondCheck)
export const openHoldAction = defineAction('openHold', openHoldSchema, openHold)
export const setCornerInsetAction = defineAction('setCornerInset', cornerInsetSchema, setCornerInset)
