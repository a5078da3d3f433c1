import type { Station } from '@/lib/core/route/step-ids'

/** What the page brings along: what the shop calls its stations, how it writes days and times. */
export type ShopWords = {
  readonly names: Readonly<Record<Station, string>>
  readonly locale: string
  readonly timeZone: string
  /** Which build of the app drew the page. */
  readonly build: string
}
