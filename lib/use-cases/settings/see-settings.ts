import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { rulesChanges } from '@/lib/core/route/rules-words'
import { settingFields, settingWords } from '@/lib/core/shop/setting-fields'
import { defaultShopSettings, type ShopSettings } from '@/lib/core/shop/settings'
import { closedDaysText, openWeekdaysText } from '@/lib/core/shop/open-calendar'
import { capital } from '@/lib/core/route/words'
import type { WantedFigures } from '@/lib/core/wanted/figures'
import { wantedChanges, wantedNames } from '@/lib/dossier/wanted-changes'
import { wantedWordsOf, type WantedWords } from '@/lib/words/wanted'
import { shimsText, type ValveLists } from '@/lib/core/valve-sheet/lists'
import { insetWords } from '@/lib/words/corner-inset'
import { db } from '@/lib/data/db'
import { namesOf } from '@/lib/data/people'
import { countBehind } from '@/lib/data/open-visits'
import { currentSettings, settingsHistory, settingsOf, type CurrentSettings } from '@/lib/data/settings'

export type SettingsVersion = {
  readonly version: number
  readonly at: Date
  readonly by: string
  readonly reason: string
  /** "Tolerance on the target: from 0.5 to 0.3". */
  readonly changes: readonly string[]
  /** It changed the tables of steps, which can be made what they were before. */
  readonly changedSteps: boolean
}

export type SettingsSeen = {
  readonly current: CurrentSettings
  readonly wanted: WantedWords
  readonly history: readonly SettingsVersion[]
  /** Whether another page of them follows. */
  readonly more: boolean
  readonly behind: number
}

/** The limits in force, and a page of the versions there were, newest first. */
export async function seeSettings(actor: Actor, page = 1): Promise<SettingsSeen> {
  must(allow(actor, 'settings.change'))
  const client = await db()
  const { rows, before, more } = await settingsHistory(client, page)
  const names = await namesOf(rows.flatMap(({ byId }) => byId ?? []))
  const valuesOf = (row: typeof before | undefined): ShopSettings =>
    row ? settingsOf(row).values : defaultShopSettings
  const history = rows.map((row, place) => ({
    version: row.version,
    at: row.createdAt,
    by: names.get(row.byId ?? '') ?? '',
    reason: row.reason,
    changes: changeWords(valuesOf(rows[place + 1] ?? before), valuesOf(row)),
    changedSteps: rulesChanges(valuesOf(rows[place + 1] ?? before).rules, valuesOf(row).rules).length > 0,
  }))
  const current = await currentSettings(client)
  const wanted = wantedWordsOf(current.values.wanted)
  return { current, wanted, history, more, behind: await countBehind(client, current.version) }
}

const changeWords = (before: ShopSettings, after: ShopSettings): string[] => [
  ...insetChange(before.cornerInset, after.cornerInset),
  ...listChanges(before.valveLists, after.valveLists),
  ...listChange('Closed', closedText(before), closedText(after)),
  ...listChange('Open on', openText(before), openText(after)),
  ...limitChanges(before, after),
  ...wantedChangeWords(before.wanted, after.wanted),
  ...rulesChanges(before.rules, after.rules),
]

const insetChange = (before: ShopSettings['cornerInset'], after: ShopSettings['cornerInset']): string[] =>
  after === null || JSON.stringify(before) === JSON.stringify(after)
    ? []
    : [`${capital(insetWords(after))}${before === null ? '' : `; before: ${insetWords(before)}`}`]

const wantedChangeWords = (before: WantedFigures, after: WantedFigures): string[] =>
  Object.entries(wantedChanges(before, after)).map(
    ([name, { from, to }]) => `${capital(wantedNames[name] ?? name)}: from ${from || 'none'} to ${to || 'none'}`,
  )

const listChanges = (before: ValveLists, after: ValveLists): string[] => [
  ...listChange('Shims the shop has', shimsText(before.shimsIn), shimsText(after.shimsIn)),
  ...listChange('Seat angles', before.seatAngles.join(', '), after.seatAngles.join(', ')),
]

const openText = ({ calendar }: ShopSettings): string => openWeekdaysText(calendar.openWeekdays)
const closedText = ({ calendar }: ShopSettings): string => closedDaysText(calendar.closedDays).replaceAll('\n', '; ')

const listChange = (label: string, from: string, to: string): string[] =>
  from === to ? [] : [`${label}: ${to === '' ? 'none' : to}; before: ${from === '' ? 'none' : from}`]

const limitChanges = (before: ShopSettings, after: ShopSettings): string[] =>
  settingFields
    .filter(({ key }) => before[key] !== after[key])
    .map((field) => {
      const [from, to] = [settingWords(field, before[field.key]), settingWords(field, after[field.key])]
      return `${field.label}: from ${from} to ${to}`
    })
