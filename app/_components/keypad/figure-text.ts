/**
 * What stands in a figure cell, and what goes up as typed. Cells show one unit at a time; a figure in the quantity's own unit
 * goes up bare ("0.018"), one in another unit carries it ("18 thou"), so that the text alone always says what was meant.
 */

const minus = '−'

/** The figure without the unit that stands behind it. */
function bodyOf(text: string, unit: string): string | null {
  return text.endsWith(` ${unit}`) ? text.slice(0, -unit.length - 1) : null
}

const namesAUnit = (text: string) => /[a-zµ°"″']/i.test(text)

/** The text for the cell while `shown` is the unit beside it. */
export function toCell(text: string, shown: string, own: string): string {
  if (text === '') return ''
  if (namesAUnit(text)) return bodyOf(text, shown) ?? text
  return shown === own ? text : `${text} ${own}`
}

/** The text that goes up. */
export function fromCell(cell: string, shown: string, own: string): string {
  if (cell === '' || namesAUnit(cell) || shown === own) return cell
  return `${cell} ${shown}`
}

/** The same figure, meant in another unit: for whoever types first and turns the unit after. */
export function turnUnit(text: string, shown: string, next: string, own: string): string {
  return fromCell(bodyOf(text, shown) ?? bodyOf(text, own) ?? text, next, own)
}

export type Key = '0' | '1' | '2' | '3' | '4' | '5' | '6' | '7' | '8' | '9' | '.' | '/' | '−' | 'back'

/** The cell's text after a key of the keypad. A minus in front is a sign; within a figure it joins a fraction: 1-7/8. */
export function press(cell: string, key: Key): string {
  if (key === 'back') return cell.slice(0, -1)
  if (key === minus) return cell === '' ? minus : cell === minus ? '' : `${cell}-`
  return cell + key
}
