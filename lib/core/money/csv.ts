import { numberFormat } from '../shop/formats'

/** A cell: text, or a figure that the program wrote itself. */
export type CsvCell = string | { readonly figure: string }

/** Text that a spreadsheet would take for a formula gets an apostrophe before it, which the spreadsheet does not show. */
const harmless = (text: string): string => (/^[\s\uFEFF]*[=+\-@\t\r\n＝＋－＠]/.test(text) ? `'${text}` : text)

const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`

/**
 * A table as a file that a spreadsheet opens right: UTF-8 with its mark, every cell quoted, lines ended by CR LF. Text that
 * begins as a formula does (= + - @ tab) is made harmless; figures are written as they are. Where numbers have a decimal
 * comma, figures have one and a semicolon stands between cells: a spreadsheet set up there would take 12.50 for words.
 * Source: RFC 4180 (quotes and line ends); OWASP, "CSV Injection" (first characters); the semicolon is common practice.
 * Example: [['Customer', 'Total'], ['=A1', { figure: '12.50' }]] → the second line is "'=A1","12.50"; with a decimal comma
 * "'=A1";"12,50".
 */
export function csvOf(rows: readonly (readonly CsvCell[])[], decimal: DecimalSign = '.'): string {
  const textOf = (cell: CsvCell): string =>
    quoted(typeof cell === 'string' ? harmless(cell) : cell.figure.replace('.', decimal))
  const separator = decimal === ',' ? ';' : ','
  return `\uFEFF${rows.map((row) => `${row.map(textOf).join(separator)}\r\n`).join('')}`
}

export type DecimalSign = '.' | ','

/** How numbers are written in a locale. Example: "de-DE" → ",", "en-GB" → ".". Source: Unicode CLDR, by `Intl`. */
export const decimalSign = (locale: string): DecimalSign =>
  numberFormat(locale, {})
    .formatToParts(1.5)
    .some(({ type, value }) => type === 'decimal' && value === ',')
    ? ','
    : '.'
