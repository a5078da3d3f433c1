import 'server-only'
import { CsvError, parse } from 'csv-parse/sync'

export type CsvLine = { readonly line: number; readonly cells: readonly string[] }

const separators = ['\t', ';', ','] as const

/** The one that parts the heading into most columns: a paste from a spreadsheet has tabs. */
function separatorOf(text: string): string {
  const [heading = ''] = text.split(/\r?\n/, 1)
  const counts = separators.map((separator) => heading.split(separator).length)
  return separators[counts.indexOf(Math.max(...counts))] ?? ','
}

type Parsed = { readonly record: string[]; readonly info: { readonly lines: number } }

/** The lines of a table that have something in them, with their number in the file; null: quotes do not close. */
export function csvLines(text: string): CsvLine[] | null {
  try {
    const rows = parse(text, {
      ...{ bom: true, delimiter: separatorOf(text), info: true, relax_column_count: true, relax_quotes: true },
      skip_empty_lines: true,
    }) as unknown as Parsed[]
    return rows
      .map(({ record, info }) => ({ line: info.lines, cells: record }))
      .filter(({ cells }) => cells.some((cell) => cell.trim() !== ''))
  } catch (error) {
    if (error instanceof CsvError) return null
    throw error
  }
}
