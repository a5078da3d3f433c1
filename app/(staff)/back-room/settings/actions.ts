'use server'
import { changeSettingsSchema } from '@/lib/schemas/settings'
import { changeSettings } from '@/lib/use-cases/settings/change-settings'
import { defineAction } from '@/lib/web/define-action'

export const changeSettingsAction = defineAction(
  'changeSettings',
  changeSettingsSchema,
  changeSettings,
  () => '/back-room/settings',
)
