import { describe, expect, test } from 'vitest'
import { parseSetting, settingFields, settingText, type SettingKey } from '@/lib/core/shop/setting-fields'
import { defaultShopSettings } from '@/lib/core/shop/settings'

const fieldOf = (key: SettingKey) => settingFields.find((field) => field.key === key)!

/** Steps, the corners, wanted figures and the valves' lists are set in places of their own. */
const onOtherPages = ['rules', 'cornerInset', 'wanted', 'valveLists', 'calendar']

test('every setting has one field', () => {
  expect(settingFields.map(({ key }) => key).toSorted()).toEqual(
    Object.keys(defaultShopSettings)
      .filter((key) => !onOtherPages.includes(key))
      .toSorted(),
  )
})

test.each(settingFields)('$label: what a shop starts with reads back as it was', (field) => {
  const value = defaultShopSettings[field.key]
  expect(parseSetting(field, settingText(field, value))).toEqual({ ok: true, value })
})

describe('as typed', () => {
  test.each([
    ['betweenHeadPart', '3', 0.03],
    ['betweenHeadPart', '2,5 %', 0.025],
    ['flowRepeatabilityPart', '1.5', 0.015],
    ['depthSettingErrorThou', '0.5 thou', 0.5],
    ['ccToleranceCc', '0.3 cc', 0.3],
    ['boltReachLimitIn', '30 thou', 0.03],
    ['boltReachLimitIn', '.030', 0.03],
    ['turnaroundDays', '7', 7],
  ] as const)('%s: %j', (key, text, value) => {
    const parsed = parseSetting(fieldOf(key), text)
    expect(parsed.ok && parsed.value).toBeCloseTo(value, 12)
  })

  test.each([
    ['betweenHeadPart', '40', 'out-of-range'],
    ['turnaroundDays', '0', 'out-of-range'],
    ['turnaroundDays', '-3', 'unreadable'],
    ['ccToleranceCc', '', 'unreadable'],
    ['ccToleranceCc', '0', 'out-of-range'],
    ['boltReachLimitIn', '3', 'ambiguous'],
    ['angleLimitDeg', '9°', 'out-of-range'],
    ['angleLimitDeg', '9', 'ambiguous'],
  ] as const)('%s: %j is refused as %s', (key, text, code) => {
    expect(parseSetting(fieldOf(key), text)).toMatchObject({ ok: false, refusal: { code } })
  })
})
