/** A TrueType font as its tables lie in the file (ISO/IEC 14496-22). */
export type TrueType = {
  readonly tables: ReadonlyMap<string, Uint8Array>
  /** Where the outline of each glyph begins in the table of outlines; one more for where the last one ends. */
  readonly places: Uint32Array
}

const viewOf = ({ buffer, byteOffset, byteLength }: Uint8Array): DataView =>
  new DataView(buffer, byteOffset, byteLength)

const headBytes = 12
const entryBytes = 16

export function readTrueType(bytes: Uint8Array): TrueType {
  const view = viewOf(bytes)
  const tables = new Map<string, Uint8Array>()
  for (let i = 0; i < view.getUint16(4); i++) {
    const at = headBytes + i * entryBytes
    const from = view.getUint32(at + 8)
    const tag = String.fromCharCode(...bytes.subarray(at, at + 4))
    tables.set(tag, bytes.subarray(from, from + view.getUint32(at + 12)))
  }
  const [loca, isLong] = [viewOf(tableOf(tables, 'loca')), hasLongPlaces(tables)]
  const places = Uint32Array.from({ length: loca.byteLength / (isLong ? 4 : 2) }, (_, id) =>
    isLong ? loca.getUint32(id * 4) : loca.getUint16(id * 2) * 2,
  )
  return { tables, places }
}

function tableOf(tables: TrueType['tables'], tag: string): Uint8Array {
  const table = tables.get(tag)
  if (!table) throw new Error(`The font has no table ${tag}`)
  return table
}

/** Places are written in full, or halved where every outline has an even length. */
const hasLongPlaces = (tables: TrueType['tables']): boolean => viewOf(tableOf(tables, 'head')).getUint16(50) === 1

/** What a reader of PDF needs, in the order of their names; instructions only where a font has them. */
const neededTables = ['cvt ', 'fpgm', 'glyf', 'head', 'hhea', 'hmtx', 'loca', 'maxp', 'prep']

/** The font with the outlines of some glyphs alone. Glyphs keep their numbers: the places of the others are empty. */
export function subsetOf(font: TrueType, ids: Iterable<number>): Uint8Array {
  const kept = withParts(font, ids)
  const { glyf, places } = outlinesOf(font, kept)
  const made = new Map([
    ['glyf', glyf],
    ['loca', placesTable(places, hasLongPlaces(font.tables))],
    ['hmtx', widthsOf(font, kept)],
  ])
  return fileOf(
    neededTables.flatMap((tag) => {
      const table = made.get(tag) ?? font.tables.get(tag)
      return table ? [[tag, table] as const] : []
    }),
  )
}

/** In the order of their numbers, with the glyphs that others are put together from, and with the one for "no such letter". */
function withParts(font: TrueType, ids: Iterable<number>): number[] {
  const kept = new Set([0, ...ids])
  // A set hands out what is added to it while it is gone through.
  for (const id of kept) for (const part of partsOf(outlineOf(font, id))) kept.add(part)
  return [...kept].sort((a, b) => a - b)
}

const outlineOf = ({ tables, places }: TrueType, id: number): Uint8Array =>
  tableOf(tables, 'glyf').subarray(places[id], places[id + 1])

const firstPartAt = 10
const flags = { words: 1, scale: 8, more: 32, twoScales: 64, fourScales: 128 }

/** The numbers of the glyphs that a glyph is put together from; none when it has an outline of its own. */
function partsOf(outline: Uint8Array): number[] {
  const view = viewOf(outline)
  if (outline.length === 0 || view.getInt16(0) >= 0) return []
  const parts: number[] = []
  let [at, flag] = [firstPartAt, flags.more]
  while (flag & flags.more) {
    flag = view.getUint16(at)
    parts.push(view.getUint16(at + 2))
    at += flag & flags.words ? 8 : 6
    at += flag & flags.fourScales ? 8 : flag & flags.twoScales ? 4 : flag & flags.scale ? 2 : 0
  }
  return parts
}

function outlinesOf(font: TrueType, kept: readonly number[]): { glyf: Uint8Array; places: Uint32Array } {
  const outlines = kept.map((id) => outlineOf(font, id))
  const glyf = new Uint8Array(outlines.reduce((sum, { length }) => sum + length, 0))
  const places = new Uint32Array(font.places.length)
  let [end, next] = [0, 0]
  kept.forEach((id, i) => {
    const outline = outlines[i] ?? new Uint8Array()
    places.fill(end, next, id + 1)
    glyf.set(outline, end)
    end += outline.length
    next = id + 1
  })
  places.fill(end, next)
  return { glyf, places }
}

function placesTable(places: Uint32Array, isLong: boolean): Uint8Array {
  const table = new Uint8Array(places.length * (isLong ? 4 : 2))
  const view = viewOf(table)
  places.forEach((place, id) => (isLong ? view.setUint32(id * 4, place) : view.setUint16(id * 2, place / 2)))
  return table
}

/** Widths of the glyphs; of the others nothing, which packs well. The last glyphs of a font may share one width. */
function widthsOf({ tables }: TrueType, kept: readonly number[]): Uint8Array {
  const source = tableOf(tables, 'hmtx')
  const table = new Uint8Array(source.length)
  const own = viewOf(tableOf(tables, 'hhea')).getUint16(34)
  const copy = (from: number, length: number) => table.set(source.subarray(from, from + length), from)
  copy((own - 1) * 4, 4)
  for (const id of kept) {
    if (id < own) copy(id * 4, 4)
    else copy(own * 4 + (id - own) * 2, 2)
  }
  return table
}

const whole4 = (length: number): number => Math.ceil(length / 4) * 4

/** The tables behind their directory. Its sums of tables are left at nothing: readers of PDF do not ask for them. */
function fileOf(tables: readonly (readonly [tag: string, table: Uint8Array])[]): Uint8Array {
  let at = headBytes + tables.length * entryBytes
  const file = new Uint8Array(tables.reduce((sum, [, { length }]) => sum + whole4(length), at))
  const view = viewOf(file)
  const power = Math.floor(Math.log2(tables.length))
  view.setUint32(0, 0x00010000)
  view.setUint16(4, tables.length)
  view.setUint16(6, 2 ** power * entryBytes)
  view.setUint16(8, power)
  view.setUint16(10, (tables.length - 2 ** power) * entryBytes)
  tables.forEach(([tag, table], i) => {
    const entry = headBytes + i * entryBytes
    for (let c = 0; c < 4; c++) file[entry + c] = tag.charCodeAt(c)
    view.setUint32(entry + 8, at)
    view.setUint32(entry + 12, table.length)
    file.set(table, at)
    at += whole4(table.length)
  })
  return file
}
