'use server'
import { changeTabletSchema, makeTabletCodeSchema, revokeTabletSchema } from '@/lib/schemas/tablet'
import { changeTablet } from '@/lib/use-cases/tablets/change-tablet'
import { makeTabletCode } from '@/lib/use-cases/tablets/make-tablet-code'
import { revokeTablet } from '@/lib/use-cases/tablets/revoke-tablet'
import { defineAction } from '@/lib/web/define-action'

export const makeTabletCodeAction = defineAction('makeTabletCode', makeTabletCodeSchema, makeTabletCode)
export const changeTabletAction = defineAction(
  'changeTablet',
  changeTabletSchema,
  changeTablet,
  () => '/back-room/tablets',
)
export const revokeTabletAction = defineAction('revokeTablet', revokeTabletSchema, revokeTablet)
