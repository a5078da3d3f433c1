import { parse } from 'csv-parse/sync'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { must } from '@/lib/core/errors'
import { mostCharacters, readFlowTable, separators } from '@/lib/core/flow/import/read-table'
import { splitCells } from '@/lib/core/flow/import/split-cells'

const cellsOf = (text: string) => must(readFlowTable(text)).rows.map(({ cells }) => cells)

describe('a pasted table', () => {
  it.each([
    ['tabs, as a spreadsheet copies', 'lift\tin\r\n0.100\t61.5\r\n', '\t'],
    ['commas', 'lift,in\n0.100,61.5', ','],
    ['semicolons', 'lift;in\n0.100;61.5', ';'],
    ['a byte order mark and old line ends', '\uFEFFlift,in\r0.100,61.5\r', ','],
    ['quotes', '"lift","in"\n"0.100","61.5"', ','],
  ])('is read with %s', (_, text, separator) => {
    expect(must(readFlowTable(text))).toMatchObject({ separator, columns: 2 })
    expect(cellsOf(text)).toEqual([
      ['lift', 'in'],
      ['0.100', '61.5'],
    ])
  })

  it('beside a semicolon or a tab, a comma is a decimal comma', () => {
    expect(cellsOf('0,100;61,5\n0,200;118,0')).toEqual([
      ['0,100', '61,5'],
      ['0,200', '118,0'],
    ])
    expect(cellsOf('0,100\t61,5')).toEqual([['0,100', '61,5']])
  })

  it.each([
    ['one space', 'lift in\n0.100 61.5\n0.200 118\n'],
    ['columns padded with spaces', '   lift       in\r\n  0.100     61.5\r\n  0.200    118\r\n'],
  ])('is read with %s between the figures', (_, text) => {
    expect(must(readFlowTable(text))).toMatchObject({ separator: 'spaces', columns: 2 })
    expect(cellsOf(text)).toEqual([
      ['lift', 'in'],
      ['0.100', '61.5'],
      ['0.200', '118'],
    ])
  })

  it('where figures stand two spaces apart, a heading of two words is one cell', () => {
    expect(cellsOf('valve lift  in cfm\n0.100       61.5\n0.200       118')[0]).toEqual(['valve lift', 'in cfm'])
  })

  it('beside spaces a comma is a decimal comma; a space after a comma, or before a unit, parts nothing', () => {
    expect(cellsOf('0,100 61,5\n0,200 118,0')).toEqual([
      ['0,100', '61,5'],
      ['0,200', '118,0'],
    ])
    expect(cellsOf('0.100, 61.5\n0.200, 118')[1]).toEqual(['0.200', '118'])
    expect(cellsOf('0.100 in, 61.5 cfm\n0.200 in, 118 cfm')[0]).toEqual(['0.100 in', '61.5 cfm'])
  })

  it('a decimal comma in quotes does not part a cell', () => {
    expect(cellsOf('"0,100","61,5"')).toEqual([['0,100', '61,5']])
  })

  it('numbers lines as the file has them: empty ones count, and those inside quotes', () => {
    const { rows } = must(readFlowTable('lift,"in\nof water"\n\n , \n0.1,60\n'))
    expect(rows.map(({ line }) => line)).toEqual([1, 5])
  })

  it('an inch mark in a bare cell is an inch mark', () => {
    expect(cellsOf('0.300",200\n0.400",231')).toEqual([
      ['0.300"', '200'],
      ['0.400"', '231'],
    ])
  })

  it('says what is wrong with what it does not take', () => {
    const refusal = (text: string) => {
      const read = readFlowTable(text)
      return read.ok ? '' : `${read.refusal.code}: ${read.refusal.message}`
    }
    expect(refusal(' \n\t\n')).toBe('missing: There is nothing in it yet.')
    expect(refusal('a,b\n"c,d')).toBe('unreadable: A quote that begins on line 2 is never closed.')
    expect(refusal('1\n'.repeat(501))).toMatch(/^out-of-range: .*500 lines/)
    expect(refusal('1,'.repeat(41))).toMatch(/^out-of-range: .*40 columns/)
    expect(refusal(' '.repeat(mostCharacters + 1))).toMatch(/^out-of-range: /)
  })
})

const cell = fc.string({ unit: fc.constantFrom('a', '1', '.', ' ', '"', ',', ';', '\t', '\n', '\r\n', 'é') })
const table = fc.array(fc.array(cell, { minLength: 2, maxLength: 5 }), { minLength: 1, maxLength: 8 })
const quoted = (text: string) => `"${text.replaceAll('"', '""')}"`

describe('cells, against csv-parse', () => {
  it('agree on whatever RFC 4180 allows', () => {
    fc.assert(
      fc.property(table, fc.constantFrom(...separators), fc.constantFrom('\n', '\r\n'), (rows, by, end) => {
        const bare = (text: string) => !/["\t;,\r\n]/.test(text)
        const text = rows.map((cells) => cells.map((one) => (bare(one) ? one : quoted(one))).join(by)).join(end)
        const theirs = parse(text, { delimiter: by, relax_column_count: true, record_delimiter: end })
        expect(must(splitCells(text, by)).map(({ cells }) => cells)).toEqual(theirs)
        expect(theirs).toEqual(rows)
      }),
    )
  })

  it('agree on quotes inside bare cells', () => {
    const text = '0.300",200\n0.350",2"20"'
    expect(must(splitCells(text, ',')).map(({ cells }) => cells)).toEqual(parse(text, { relax_quotes: true }))
  })
})
