import type { SpecSheetData } from '@/lib/core/spec/spec-sheet'
import type { PrintSetting } from '@/lib/pdf/print-setting'
import { specSheet } from '@/lib/pdf/spec-sheet'
import { momentWords, type WhenManner } from './when-words'

export const printSetting = (shop: WhenManner & { readonly paper: string }, now: Date): PrintSetting => ({
  paper: shop.paper === 'letter' ? 'letter' : 'a4',
  printedAt: momentWords(now, shop),
  now,
})

export const printSpec = (spec: SpecSheetData, setting: PrintSetting): Promise<Uint8Array> =>
  specSheet(spec, setting)
