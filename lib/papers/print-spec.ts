import type { SpecSheetData } from '@/lib/core/spec/spec-sheet'
import { log } from '@/lib/data/log'
import type { PrintSetting } from '@/lib/pdf/print-setting'
import { specSheet } from '@/lib/pdf/spec-sheet'
import { momentWords, type WhenManner } from '@/lib/core/shop/when-words'
import { withLogo } from './with-logo'

export const printSetting = (shop: WhenManner & { readonly paper: string }, now: Date): PrintSetting => ({
  paper: shop.paper === 'letter' ? 'letter' : 'a4',
  printedAt: momentWords(now, shop),
  now,
  onMissing: (title, letters) =>
    log.warn({ paper: title, letters: letters.map(codePoint) }, 'letters that no face has'),
})

/** "U+6F22": the letter alone, and not the name it stands in. */
const codePoint = (letter: string): string =>
  `U+${(letter.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`

export const printSpec: (spec: SpecSheetData, setting: PrintSetting) => Promise<Uint8Array> = withLogo(specSheet)
