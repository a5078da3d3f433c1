import { describe, expect, it } from 'vitest'
import { turnaround } from '@/lib/core/shop/turnaround'
import type { Drawing, PathMark } from '@/lib/drawing/marks'
import { outNow, type OutNow } from '@/lib/drawing/out-now'
import { chance, marksOutside, unclearWords } from './clear-words'

const order = (over: Partial<OutNow> = {}): OutNow => ({
  tags: ['T-0404', 'T-0405'],
  vendor: 'Tarn Grinding',
  days: 12,
  promisedDays: 9,
  usual: turnaround([3, 5, 9]),
  ...over,
})
const draw = (rows: readonly OutNow[], withVendor = false, widthMm = 160) =>
  outNow(rows, { title: 'Out now', withVendor, widthMm })

const words = (drawing: Drawing) => drawing.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))
const paths = ({ marks }: Drawing) => marks.filter((mark): mark is PathMark => mark.kind === 'path')
/** Left and right of every rectangle of one fill. */
const bars = (drawing: Drawing, fill: 'ink' | 'ground') =>
  paths(drawing)
    .filter((mark) => mark.fill === fill && (mark.d.match(/L/g) ?? []).length === 3)
    .map(({ d }) => (d.match(/-?[\d.]+/g) ?? []).map(Number))
    .map(([left = NaN, , right = NaN]) => [left, right] as const)

describe('what is out now', () => {
  it('is a bar as long as its days, on one scale with the others', () => {
    const drawing = draw([order({ days: 4, promisedDays: null }), order({ days: 12, promisedDays: null })])
    const [short, long] = bars(drawing, 'ground').map(([left, right]) => right - left)
    expect((long ?? NaN) / (short ?? NaN)).toBeCloseTo(3, 1)
  })

  it('past its promise is solid from the promise on, and says by how many days', () => {
    const drawing = draw([order({ days: 12, promisedDays: 9 })])
    const [whole] = bars(drawing, 'ground')
    const [late] = bars(drawing, 'ink')
    // 9 of 12 days are as promised: the solid part begins at three quarters.
    expect(((late?.[0] ?? NaN) - (whole?.[0] ?? NaN)) / ((whole?.[1] ?? NaN) - (whole?.[0] ?? NaN))).toBeCloseTo(
      0.75,
      2,
    )
    expect(late?.[1]).toBeCloseTo(whole?.[1] ?? NaN, 2)
    expect(words(drawing)).toEqual(expect.arrayContaining(['12 days, late by 3', 'past the promise', 'promised']))
  })

  it('in time has no solid part, nor the word; longer than usual is said', () => {
    const drawing = draw([order({ days: 8, promisedDays: 9 }), order({ days: 10, promisedDays: null })])
    expect(bars(drawing, 'ink')).toEqual([])
    expect(words(drawing).join(' ')).not.toContain('late')
    expect(words(drawing)).toEqual(expect.arrayContaining(['8 days', '10 days, past nine of ten']))
  })

  it('names only the signs that stand in it', () => {
    const bare = words(draw([order({ promisedDays: null, usual: null })]))
    for (const sign of ['median', 'nine of ten', 'promised', 'past the promise']) expect(bare).not.toContain(sign)
  })

  it('says all of it in words', () => {
    expect(
      draw([order(), order({ tags: ['T-0410'], days: 1, promisedDays: null, usual: null })], true).description,
    ).toBe(
      'T-0404, T-0405 at Tarn Grinding out 12 days, promised within 9 days, late by 3 days, usually 5 days, nine of ten within 9 days. ' +
        'T-0410 at Tarn Grinding out 1 day, no promise given, nothing came back yet.',
    )
    expect(draw([]).description).toBe('Nothing is out.')
  })

  it('every word stands clear of the others and of every mark, for any orders, at the desk and on a telephone', () => {
    const upTo = chance(1123)
    const vendors = ['Tarn Grinding', 'X', 'Northgate Grinding and Surface Works of the Lower Quay']
    for (let shop = 0; shop < 300; shop++) {
      const rows = Array.from({ length: 1 + upTo(8) }, (): OutNow => {
        const took = Array.from({ length: upTo(12) }, () => upTo(40))
        const tags = Array.from({ length: 1 + upTo(9) }, (_, i) =>
          upTo(5) === 0 ? `OWN-NUMBER-${1000 + i}` : `T-${1000 + i}`,
        )
        return {
          tags,
          vendor: vendors[upTo(3)] ?? '',
          days: upTo(shop % 7 === 0 ? 400 : 50),
          promisedDays: upTo(3) === 0 ? null : upTo(30),
          usual: turnaround(took),
        }
      })
      for (const widthMm of [160, 84]) {
        const drawing = draw(rows, upTo(2) === 1, widthMm)
        expect([rows, unclearWords(drawing), marksOutside(drawing)]).toEqual([rows, [], []])
      }
    }
  })

  it('is told by shape: nothing but ink and the ground', () => {
    const tones = draw([order()]).marks.flatMap((mark) =>
      mark.kind === 'text' ? [mark.tone] : [mark.fill, mark.stroke?.tone],
    )
    expect(new Set(tones.filter(Boolean))).toEqual(new Set(['ink', 'ground']))
  })
})
