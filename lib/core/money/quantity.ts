import { ok, refuse, type Result } from '../errors'
import { mostThousandths } from './limits'

/**
 * A quantity as typed ("2", "1.5", "1,5 h", ".25"), kept exactly in thousandths.
 * @returns 1 to 9 999 000 thousandths; refused as `unreadable`
 * Example: "1.5 h" → 1500.
 */
export function parseQuantity(text: string): Result<number> {
  const match = /^(\d{0,4})(?:[.,](\d{1,3}))?(?:\s*(?:h|hr|hrs|pc|pcs))?$/i.exec(text.trim())
  const [, whole = '', decimals = ''] = match ?? []
  const thousandths = Number(whole || '0') * 1000 + Number(decimals.padEnd(3, '0'))
  if (!match || thousandths < 1 || thousandths > mostThousandths) {
    return refuse('unreadable', 'Enter a quantity above 0, such as 2 or 1.5.')
  }
  return ok(thousandths)
}

/** A quantity as it is typed and read: 1500 → "1.5", 2000 → "2", 250 → "0.25". `parseQuantity` reads it back. */
export function quantityText(thousandths: number): string {
  const decimals = String(thousandths % 1000).padStart(3, '0')
  const rest = decimals.replace(/0+$/, '')
  return `${Math.floor(thousandths / 1000)}${rest === '' ? '' : `.${rest}`}`
}
