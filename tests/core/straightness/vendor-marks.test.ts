import { describe, expect, it } from 'vitest'
import { marksFound } from '../../../lib/core/at-mill/cut-at-step'
import { marksAgainst } from '../../../lib/core/straightness/marks-against'
import { marksInOneWay, readMarks, type VendorMarks } from '../../../lib/core/straightness/vendor-marks'
import { marksText, readingAgainstText } from '../../../lib/words/vendor-marks'

const none = { flatIn: null, angleIn: null, angleDeg: null, deepIn: null, edge: null }
/** Figures in thou say what a depth comes to, past the last bit of a sum in doubles. */
const rounded = (value: unknown) =>
  JSON.parse(JSON.stringify(value, (_, part) => (typeof part === 'number' ? Number(part.toFixed(6)) : part))) as unknown

describe('a vendor’s marks', () => {
  it.each([
    ['20 + 63', { flatIn: 0.02, angleIn: 0.063 }],
    ['20 thou + 63 thou', { flatIn: 0.02, angleIn: 0.063 }],
    ['63 angle; 20 flat', { flatIn: 0.02, angleIn: 0.063 }],
    ['20 + 63 intake', { flatIn: 0.02, angleIn: 0.063, edge: 'intake' }],
    ['63 angle EX', { angleIn: 0.063, edge: 'exhaust' }],
    // A depth at each edge: 83 − 20.
    ['20 int / 83 exh', { flatIn: 0.02, angleIn: 0.063, edge: 'exhaust' }],
    ['83 exh, 20 int', { flatIn: 0.02, angleIn: 0.063, edge: 'exhaust' }],
    ['.083 int / .020 exh', { flatIn: 0.02, angleIn: 0.063, edge: 'intake' }],
    ['20 int / 20 exh', { flatIn: 0.02, angleIn: 0, edge: 'exhaust' }],
    ['1°', { angleDeg: 1 }],
    ['0.5 deg', { angleDeg: 0.5 }],
    ['1/2 deg', { angleDeg: 0.5 }],
    ['3/4°', { angleDeg: 0.75 }],
    ['1/4 degree EX', { angleDeg: 0.25, edge: 'exhaust' }],
    ['20 + 1/2 deg', { flatIn: 0.02, angleDeg: 0.5 }],
    ['20 + 0.6°', { flatIn: 0.02, angleDeg: 0.6 }],
    ['flat 0.5 mm', { flatIn: 0.019685 }],
    // Less at the edge than flat: it can only be the part.
    ['63/20', { flatIn: 0.063, angleIn: 0.02 }],
  ] as const)('“%s” has one reading', (text, wanted) => {
    const read = readMarks(text)
    expect(read.ok && rounded(read.value)).toEqual([{ ...none, ...wanted }])
  })

  it.each([
    [
      '0.020/0.083',
      [
        { flatIn: 0.02, angleIn: 0.083 },
        { flatIn: 0.02, angleIn: 0.063 },
      ],
    ],
    [
      '.020 / .083',
      [
        { flatIn: 0.02, angleIn: 0.083 },
        { flatIn: 0.02, angleIn: 0.063 },
      ],
    ],
    [
      '0,020; 0,083',
      [
        { flatIn: 0.02, angleIn: 0.083 },
        { flatIn: 0.02, angleIn: 0.063 },
      ],
    ],
    [
      '20 thou and 83 thou',
      [
        { flatIn: 0.02, angleIn: 0.083 },
        { flatIn: 0.02, angleIn: 0.063 },
      ],
    ],
    [
      '20/64',
      [
        { flatIn: 0.02, angleIn: 0.064 },
        { flatIn: 0.02, angleIn: 0.044 },
      ],
    ],
    [
      '83 EX',
      [
        { angleIn: 0.083, edge: 'exhaust' },
        { deepIn: 0.083, edge: 'exhaust' },
      ],
    ],
    [
      '63 thou at the intake edge',
      [
        { angleIn: 0.063, edge: 'intake' },
        { deepIn: 0.063, edge: 'intake' },
      ],
    ],
    [
      '20 flat, 83 at the exhaust edge',
      [
        { flatIn: 0.02, angleIn: 0.083, edge: 'exhaust' },
        { flatIn: 0.02, angleIn: 0.063, edge: 'exhaust' },
      ],
    ],
  ] as const)('“%s” has two, and none is taken', (text, wanted) => {
    const read = readMarks(text)
    expect(read.ok && rounded(read.value)).toEqual(wanted.map((one) => ({ ...none, ...one })))
    const found = marksFound(['none', text])
    expect([found.read, found.readings.length, found.text]).toEqual([null, 2, text])
  })

  it.each([
    ['63', 'ambiguous'], // flat or angle?
    ['.063', 'ambiguous'],
    ['1/64', 'ambiguous'], // a fraction of an inch, or two parts?
    ['3/32 flat', 'ambiguous'],
    ['B7 63', 'unreadable'],
    ['none', 'unreadable'],
    ['', 'unreadable'],
    ['20 + 63 + 5', 'ambiguous'],
    ['20 flat + 63 flat', 'unreadable'],
    ['20 intake + 63 exhaust', 'unreadable'],
    ['20 int / 83 exh / 5', 'unreadable'],
    ['9°', 'unreadable'], // no head is cut that far
    ['0.9 in flat', 'unreadable'],
    ['63 IN', 'unreadable'], // 63 inches, or the intake edge
    ['-20 flat', 'unreadable'],
    ['fixture 63', 'unreadable'],
  ] as const)('“%s” is refused: %s', (text, code) => {
    expect(readMarks(text)).toMatchObject({ ok: false, refusal: { code } })
  })
})

describe('what marks were chosen to mean', () => {
  it.each([
    '0.020/0.083',
    '63 EX',
    '20 flat, 83 at the exhaust edge',
    '83 at the intake edge',
    '63 deep',
    '20 + 63',
    '1/2 deg',
  ])('each way to read “%s” is written so that it is read in that way alone', (text) => {
    const read = readMarks(text)
    const ways = (read.ok ? rounded(read.value) : []) as VendorMarks[]
    expect(ways.length).toBeGreaterThan(0)
    for (const way of ways) {
      const again = readMarks(marksInOneWay(way))
      expect(again.ok && rounded(again.value)).toEqual([way])
    }
  })
  it('“all” and “total” are everything cut at an edge, “angle” the part', () => {
    const one = (text: string) => {
      const read = readMarks(text)
      return read.ok ? rounded(read.value) : read.refusal.code
    }
    expect(one('83 all exhaust')).toEqual([{ ...none, deepIn: 0.083, edge: 'exhaust' }])
    expect(one('20 flat, 83 total exhaust')).toEqual([{ ...none, flatIn: 0.02, angleIn: 0.063, edge: 'exhaust' }])
    // All that was cut at an edge cannot be less than the flat part; nor can a depth be the part and all of it.
    expect(one('63 flat, 20 total exhaust')).toBe('ambiguous')
    expect(one('63 angle all')).toBe('unreadable')
    expect(marksInOneWay({ ...none, flatIn: 0.02, angleIn: 0.083 - 0.02, edge: 'exhaust' })).toBe(
      '0.02 in flat; 0.063 in angle exhaust',
    )
  })
})

describe('beside the corners’ own answer', () => {
  const measured = { flatIn: 0.0201, angleIn: 0.0632 }
  it('says of each way how far it is off', () => {
    const read = readMarks('0.020/0.083')
    // 83 − 63.2 = 19.8; the other way the worst part is 63.2 − 63 = 0.2.
    expect(read.ok && read.value.map((way) => readingAgainstText(way, measured, 0.002))).toEqual([
      '20 thou flat, 83 thou angle part: the corners do not agree, off by 19.8 thou',
      '20 thou flat, 63 thou angle part: the corners agree, off by 0.2 thou',
    ])
  })

  it('holds a depth at the edge against flat and angle part together', () => {
    // 20.1 + 63.2 = 83.3.
    const { offIn, agrees } = marksAgainst({ flatIn: null, angleIn: null, deepIn: 0.083 }, measured, 0.002)
    expect([offIn?.toFixed(4), agrees]).toEqual(['0.0003', true])
    expect(marksText({ ...none, deepIn: 0.083, edge: 'exhaust' })).toBe('83 thou in all at the exhaust edge')
    expect(marksText({ ...none, deepIn: 0.083 })).toBe('83 thou in all at the deep edge')
  })

  it('agrees at the tolerance and not beyond it; degrees alone are not held against depths', () => {
    const off = (flatIn: number) =>
      marksAgainst({ flatIn, angleIn: null, deepIn: null }, { flatIn: 0.02, angleIn: 0 }, 0.002)
    expect([off(0.022).agrees, off(0.0221).agrees, off(0.018).agrees]).toEqual([true, false, true])
    expect(marksAgainst({ flatIn: null, angleIn: null, deepIn: null }, measured, 0.002)).toEqual({
      offIn: null,
      agrees: false,
    })
    expect(readingAgainstText({ ...none, angleDeg: 0.5 }, measured, 0.002)).toBe('0.5°')
  })
})
