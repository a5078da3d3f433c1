import { ok, refuse, type Result } from '../errors'
import { quantities, unitFamilies, type Quantity, type UnitFamily } from './quantities'

/** How units are typed, beside their own name; lower case, without spaces and points. */
const spellings: Readonly<Record<UnitFamily, ReadonlyMap<string, string>>> = {
  length: new Map([
    ['"', 'in'],
    ['inch', 'in'],
    ['inches', 'in'],
    ['thous', 'thou'],
    ['mil', 'thou'],
    ['mils', 'thou'],
  ]),
  volume: new Map([
    ['ccm', 'cc'],
    ['cm3', 'cc'],
    ['cm³', 'cc'],
    ['ml', 'cc'],
    ['in3', 'in³'],
    ['cuin', 'in³'],
  ]),
  area: new Map([
    ['in2', 'in²'],
    ['sqin', 'in²'],
    ['mm2', 'mm²'],
    ['cm2', 'cm²'],
  ]),
  angle: new Map([
    ['deg', '°'],
    ['degree', '°'],
    ['degrees', '°'],
    ["'", 'min'],
  ]),
  pressure: new Map([
    ['inh₂o', 'inH2O'],
    ['inwater', 'inH2O'],
    ['"h2o', 'inH2O'],
    ['"h₂o', 'inH2O'],
  ]),
  flow: new Map(),
  temperature: new Map([
    ['c', '°C'],
    ['f', '°F'],
  ]),
  finish: new Map([
    ['uin', 'µin'],
    ['μin', 'µin'],
    ['ra', 'µin'],
    ['um', 'µm'],
    ['μm', 'µm'],
  ]),
  force: new Map([
    ['lb', 'lbf'],
    ['lbs', 'lbf'],
  ]),
  rate: new Map([['thoupercc', 'thou/cc']]),
  springRate: new Map([
    ['lb/in', 'lbf/in'],
    ['lbs/in', 'lbf/in'],
  ]),
  vacuum: new Map([
    ['"hg', 'inHg'],
    ['inmercury', 'inHg'],
  ]),
  gauge: new Map([
    ['lbs', 'psi'],
    ['lb/in2', 'psi'],
  ]),
  time: new Map([
    ['mins', 'min'],
    ['minutes', 'min'],
    ['hours', 'h'],
  ]),
  count: new Map(),
}

const plain = (typed: string): string => typed.toLowerCase().replaceAll(/[\s.]/g, '')

/** The unit's own name, from how it was typed behind a number; null when none was. */
export function unitTyped(typed: string, quantity: Quantity): Result<string | null> {
  if (typed === '') return ok(null)
  const { family } = quantities[quantity]
  const names = Object.keys(unitFamilies[family]).filter((name) => name !== '')
  const bare = plain(typed)
  const unit = names.find((name) => plain(name) === bare) ?? spellings[family].get(bare)
  if (unit !== undefined) return ok(unit)
  return refuse(
    'unreadable',
    names.length === 0
      ? `“${typed}” does not belong here. Enter a plain number.`
      : `“${typed}” does not fit here. Use ${names.join(', ')}.`,
  )
}
