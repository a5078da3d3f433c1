import { parse } from 'csv-parse/sync'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { csvOf, decimalSign } from '@/lib/core/money/csv'

const read = (text: string): string[][] => parse(text, { bom: true, relax_column_count: true })

describe('a table for a spreadsheet', () => {
  it('has the mark of UTF-8, every cell quoted, lines ended by CR LF', () => {
    expect(
      csvOf([
        ['Customer', 'Total'],
        ['Ørn "Bo" Vårdal, sons', { figure: '-12.50' }],
      ]),
    ).toBe('\uFEFF"Customer","Total"\r\n"Ørn ""Bo"" Vårdal, sons","-12.50"\r\n')
  })

  it('has decimal commas and semicolons where numbers are written so, and text stays as it is', () => {
    // By the publications of the countries: 12,50 in Germany, France, Poland and Brazil; 12.50 in the others.
    const comma = ['de-DE', 'fr-FR', 'pl-PL', 'pt-BR', 'nl-NL', 'sv-SE']
    const point = ['en-US', 'en-GB', 'en-AU', 'ja-JP', 'es-MX']
    expect([comma.map(decimalSign), point.map(decimalSign)]).toEqual([comma.map(() => ','), point.map(() => '.')])
    const text = csvOf([['4.5 in, "long"', { figure: '-1250.05' }]], ',')
    expect(parse(text, { bom: true, delimiter: ';' })).toEqual([['4.5 in, "long"', '-1250,05']])
  })

  it.each(['=SUM(A1)', '+1', '-1', '@x', '\tx', '\r=x', ' =x', '＝x'])('makes %j harmless', (text) => {
    expect(read(csvOf([[text]]))[0]?.[0]).toBe(`'${text}`)
  })

  it('is read back as it was by a reader that is not ours, but for what could run', () => {
    const text = fc.string({ unit: fc.constantFrom('a', '"', ',', ';', '\n', '\r', 'é', '漢', ' ', '1', '=') })
    fc.assert(
      fc.property(fc.array(fc.array(text, { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 5 }), (rows) => {
        const back = read(csvOf(rows))
        expect(back.map((cells) => cells.map((cell) => cell.replace(/^'/, '')))).toEqual(rows)
        expect(back.flat().filter((cell) => /^[=+\-@\t\r]/.test(cell))).toEqual([])
      }),
    )
  })
})
