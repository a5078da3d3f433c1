import 'server-only'
import { RefusedError } from '@/lib/core/errors'
import type { ShopSettings } from '@/lib/core/shop/settings'
import type { Reader } from './db'
import { defaultSettings, settingsOf } from './settings'

type Row = {
  readonly timeZone: string
  readonly locale: string
  readonly version: number | null
  readonly values: string | null
}

/** How the shop writes time, and its settings as they are now: one statement for pages that ask for much. */
export async function shopWithSettings(
  reader: Reader,
): Promise<{ readonly timeZone: string; readonly locale: string; readonly settings: ShopSettings }> {
  const [row] = await reader.$queryRaw<Row[]>`
    SELECT sh."timeZone", sh."locale", n."version", n."values" FROM "Shop" sh
    LEFT JOIN "Settings" n ON n."version" = (SELECT MAX("version") FROM "Settings") WHERE sh."id" = 1`
  if (!row) throw new RefusedError({ code: 'wrong-state', message: 'This shop has not been set up yet.' })
  const { timeZone, locale, version, values } = row
  const current =
    version === null || values === null ? defaultSettings : settingsOf({ version: Number(version), values })
  return { timeZone, locale, settings: current.values }
}
