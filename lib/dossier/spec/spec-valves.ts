import { readingSpecs } from '@/lib/core/readings/specs'
import { ports, type Port } from '@/lib/core/readings/valves'
import type { ValveKind } from '@/lib/core/readings/valve-kinds'
import { capital } from '@/lib/core/route/words'
import type { SpecLine } from '@/lib/core/spec/spec-sheet'
import { formatFigure } from '@/lib/core/units/format-figure'
import { valveName } from '@/lib/core/valve-sheet/sheet'
import { filledWords } from '@/lib/words/valve-sheet'
import type { Dossier } from '../dossier'
import { cellText, sheetOf, unitOf } from '../valve-sheet-of'

type Given = { readonly port: Port; readonly name: string; readonly text: string; readonly filled: boolean }

/** What was read of every valve in one line, both kinds in turn; what was filled in one go is said to be that. */
export function valveLine(head: Dossier, kind: ValveKind): SpecLine[] {
  const { valves, counts, columns } = sheetOf(head)
  const cells = columns.find(({ column }) => column.kind === kind)?.cells ?? []
  const given = valves.flatMap((valve, at): Given[] => {
    const cell = cells[at]
    if (!cell?.reading) return []
    const text = cellText(kind, cell.reading)
    return [{ port: valve.port, name: valveName(valve, counts), text, filled: cell.filled }]
  })
  if (given.length === 0) return []
  const unit = unitOf(kind)
  const whole = given.length === valves.length
  const parts = oneWord(given) && whole ? [portWords('', given, unit)] : ports.flatMap((port) => partOf(port))
  function partOf(port: Port): string[] {
    const own = given.filter((one) => one.port === port)
    const all = valves.filter((valve) => valve.port === port).length
    return own.length === 0 ? [] : [own.length === all ? portWords(port, own, unit) : namedWords(own, unit)]
  }
  const differ = parts.some((part) => part.includes(', ') && !part.includes(' at each'))
  const tail = whole && differ ? [`chambers 1 to ${head.facts.chambers}`] : []
  return [{ label: readingSpecs[kind].label, value: [...parts, ...tail].join('; ') }]
}

const oneWord = (given: readonly Given[]): boolean =>
  given.every(({ text, filled }) => text === given[0]?.text && filled === given[0].filled)

const withUnit = (text: string, unit: string): string => (unit === '' ? text : `${text} ${unit}`)

/** "intake 0.058, 0.060 in", "exhaust 0.070 in at each, filled, not measured". */
function portWords(port: Port | '', given: readonly Given[], unit: string): string {
  const alike = given.every(({ text }) => text === given[0]?.text)
  const texts = alike ? `${withUnit(given[0]?.text ?? '', unit)} at each` : listWords(given, unit)
  return `${port} ${texts}${filledTail(given)}`.trim()
}

const listWords = (given: readonly Given[], unit: string): string =>
  withUnit(given.map(({ text }) => text).join(unit === '' ? ' / ' : ', '), unit)

const namedWords = (given: readonly Given[], unit: string): string =>
  `${given.map(({ name, text }) => `${name} ${withUnit(text, unit)}`).join(', ')}${filledTail(given)}`

function filledTail(given: readonly Given[]): string {
  const filled = given.filter((one) => one.filled).length
  if (filled === 0) return ''
  return filled === given.length ? `, ${filledWords}` : `, ${filled} of them ${filledWords}`
}

/** Lift at which the retainer meets the seal, or the coils close, whichever comes first: the least of the valves of a kind. */
export function usableLiftLines(head: Dossier): SpecLine[] {
  const { valves, columns } = sheetOf(head)
  const at = (kind: ValveKind, row: number) =>
    columns.find(({ column }) => column.kind === kind)?.cells[row]?.reading?.value ?? null
  return ports.flatMap((port) => {
    const limits = valves.flatMap((valve, row) => {
      if (valve.port !== port) return []
      const toSealIn = at('retainer-to-seal', row)
      const [installedIn, boundIn] = [at('installed-height', row), at('coil-bind', row)]
      const bySpring = installedIn === null || boundIn === null ? null : installedIn - boundIn
      return [
        ...(toSealIn === null ? [] : [{ liftIn: toSealIn, why: 'the retainer meets the seal' }]),
        ...(bySpring === null ? [] : [{ liftIn: bySpring, why: 'the coils close' }]),
      ]
    })
    const least = limits.toSorted((a, b) => a.liftIn - b.liftIn)[0]
    if (!least) return []
    const value = `less than ${formatFigure(least.liftIn, 'lift')}, where ${least.why}`
    return [{ label: `${capital(port)}: largest usable lift`, value }]
  })
}
