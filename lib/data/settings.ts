import 'server-only'
import type { RouteRules } from '@/lib/core/route/rules'
import { defaultShopSettings, type ShopSettings } from '@/lib/core/shop/settings'
import type { Reader } from './db'
import { pageOfRows, rowsOfPage } from './paging'
import { settingsValues } from './stored/settings'

export type CurrentSettings = { readonly version: number; readonly values: ShopSettings }

/** What every shop starts with, before a version of its own. */
export const defaultSettings: CurrentSettings = { version: 0, values: defaultShopSettings }

/** The newest version. */
export async function currentSettings(reader: Reader): Promise<CurrentSettings> {
  const row = await reader.settings.findFirst({ orderBy: { version: 'desc' } })
  if (!row) return defaultSettings
  return settingsOf(row)
}

/** The tables of the route as they stand: what names steps and stations in lists. */
export const currentRules = async (reader: Reader): Promise<RouteRules> => (await currentSettings(reader)).values.rules

/** A version that was in force; 0 is what every shop starts with. */
export async function settingsAt(reader: Reader, version: number): Promise<CurrentSettings> {
  const row = await reader.settings.findUnique({ where: { version } })
  return row ? settingsOf(row) : defaultSettings
}

const historySize = 25

/** A page of the versions there were, newest first, as kept; `before`: the one that the last of them followed. */
export async function settingsHistory(reader: Reader, page: number) {
  const { skip, take } = rowsOfPage(page, historySize)
  const found = await reader.settings.findMany({ orderBy: { version: 'desc' }, skip, take })
  return { ...pageOfRows(found, historySize), before: found[historySize] ?? null }
}

export const settingsOf = (row: { version: number; values: string }): CurrentSettings => ({
  version: row.version,
  values: settingsValues.read(row.values, row.version),
})
