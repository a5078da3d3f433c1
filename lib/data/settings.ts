import 'server-only'
import { defaultShopSettings, type ShopSettings } from '@/lib/core/shop/settings'
import type { Reader } from './db'

export type CurrentSettings = { readonly version: number; readonly values: ShopSettings }

/** The newest version. Defaults fill what a version written before a setting existed does not have. */
export async function currentSettings(reader: Reader): Promise<CurrentSettings> {
  const row = await reader.settings.findFirst({ orderBy: { version: 'desc' } })
  if (!row) return { version: 0, values: defaultShopSettings }
  return { version: row.version, values: { ...defaultShopSettings, ...(JSON.parse(row.values) as object) } }
}
