import type { Quantity } from '../units/quantities'
import type { ShopLimits } from './settings'

export type SettingKey = keyof ShopLimits

/** How a setting is typed: as a figure of the shop, or as a plain number in one unit (`scale`: what one of it is worth). */
export type SettingKind =
  | { readonly quantity: Quantity; readonly within?: readonly [leastValue: number, mostValue: number] }
  | { readonly unit: string; readonly scale: number; readonly least: number; readonly most: number }

export type SettingField = {
  readonly key: SettingKey
  readonly label: string
  readonly about: string
  readonly kind: SettingKind
}

export const depth: SettingKind = { quantity: 'depth' }
export const vacuum: SettingKind = { quantity: 'vacuum' }
/**
 * A depth that decides whether a step comes at all: beyond this no head is safe without it, so no shop sets it farther
 * [from memory, common practice].
 */
export const noMoreThan = (most: number): SettingKind => ({ quantity: 'depth', within: [0, most] })
export const noLessThan = (least: number): SettingKind => ({ quantity: 'depth', within: [least, 0.5] })
export const angle: SettingKind = { quantity: 'angle' }
export const cc = (least: number, most: number): SettingKind => ({ unit: 'cc', scale: 1, least, most })
export const days = (least: number, most: number): SettingKind => ({ unit: 'days', scale: 1, least, most })
/** A pure number: so many limits, so many uncertainties. */
export const times: SettingKind = { unit: 'times', scale: 1, least: 0.5, most: 100 }
export const perCent = (most: number): SettingKind => ({ unit: '%', scale: 0.01, least: 0.1, most })

export type SettingGroup = { readonly title: string; readonly fields: readonly SettingField[] }

export const field = (key: SettingKey, label: string, kind: SettingKind, about = ''): SettingField => ({
  key,
  label,
  kind,
  about,
})
