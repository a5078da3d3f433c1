'use server'
import { changeSettingsSchema } from '@/lib/schemas/settings'
import { cornerInsetSchema } from '@/lib/schemas/corner-inset'
import { changeShopWantedSchema } from '@/lib/schemas/wanted'
import { changeSettings } from '@/lib/use-cases/settings/change-settings'
import { changeShopWanted } from '@/lib/use-cases/settings/change-shop-wanted'
import { setCornerInset } from '@/lib/use-cases/settings/set-corner-inset'
import { valveListsSchema } from '@/lib/schemas/valve-lists'
import { setValveLists } from '@/lib/use-cases/settings/set-valve-lists'
import { calendarSchema } from '@/lib/schemas/shop-calendar'
import { setCalendar } from '@/lib/use-cases/settings/set-calendar'
import { defineAction } from '@/lib/web/define-action'

export const changeSettingsAction = defineAction(
  'changeSettings',
  changeSettingsSchema,
  changeSettings,
  () => '/back-room/settings',
)

export const changeCornerInsetAction = defineAction(
  'changeCornerInset',
  cornerInsetSchema,
  setCornerInset,
  () => '/back-room/settings',
)

export const changeShopWantedAction = defineAction(
  'changeShopWanted',
  changeShopWantedSchema,
  changeShopWanted,
  () => '/back-room/settings',
)

export const changeValveListsAction = defineAction(
  'changeValveLists',
  valveListsSchema,
  setValveLists,
  () => '/back-room/settings',
)

export const changeCalendarAction = defineAction(
  'changeCalendar',
  calendarSchema,
  setCalendar,
  () => '/back-room/settings',
)
