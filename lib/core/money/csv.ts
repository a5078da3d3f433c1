/** A cell: text, or a figure that the program wrote itself. */
export type CsvCell = string | { readonly figure: string }

/** Text that a spreadsheet would take for a formula gets an apostrophe before it, which the spreadsheet does not show. */
const harmless = (text: string): string => (/^[\s\uFEFF]*[=+\-@\t\r\n＝＋－＠]/.test(text) ? `'${text}` : text)

const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`

/**
 * A table as a file that a spreadsheet opens right: UTF-8 with its mark, every cell quoted, lines ended by CR LF. Text that
 * begins as a formula does (= + - @ tab) is made harmless; figures are written as they are.
 * Source: RFC 4180 (quotes and line ends); OWASP, "CSV Injection" (first characters).
 * Example: [['Customer', 'Total'], ['=A1', { figure: '12.50' }]] → the second line is "'=A1","12.50".
 */
export const csvOf = (rows: readonly (readonly CsvCell[])[]): string =>
  `\uFEFF${rows.map((row) => `${row.map(cellText).join(',')}\r\n`).join('')}`

const cellText = (cell: CsvCell): string => quoted(typeof cell === 'string' ? harmless(cell) : cell.figure)
