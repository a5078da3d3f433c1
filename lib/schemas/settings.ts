import { z } from 'zod'
import { parseSetting, settingFields, type SettingField, type SettingKey } from '@/lib/core/shop/setting-fields'
import type { ShopLimits } from '@/lib/core/shop/settings'
import { requiredText } from './figure'
import { text } from './text'

const typedSetting = (field: SettingField) =>
  text().transform((text, context) => {
    const parsed = parseSetting(field, text)
    if (parsed.ok) return parsed.value
    context.addIssue({ code: 'custom', message: parsed.refusal.message })
    return z.NEVER
  })

type Fields = Record<SettingKey, ReturnType<typeof typedSetting>>
const values = z.object(Object.fromEntries(settingFields.map((field) => [field.key, typedSetting(field)])) as Fields)

/** The caution comes before the limit. */
function inOrder({ values: settings }: { values: ShopLimits }, context: z.RefinementCtx): void {
  if (settings.angleCautionDeg <= settings.angleLimitDeg) return
  const message = 'Enter a caution no larger than the largest angle.'
  context.addIssue({ code: 'custom', path: ['values', 'angleCautionDeg'], message })
}

export const changeSettingsSchema = z
  .object({
    /** The version that was on the page: another one since then is a conflict. */
    version: z.number().int(),
    values,
    reason: requiredText('Enter the reason. It is kept with the new limits.', 400),
  })
  .superRefine(inOrder)

export type ChangeSettings = z.output<typeof changeSettingsSchema>
