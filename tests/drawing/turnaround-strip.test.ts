import { describe, expect, it } from 'vitest'
import { turnaround } from '@/lib/core/shop/turnaround'
import type { Drawing } from '@/lib/drawing/marks'
import { turnaroundStrip } from '@/lib/drawing/turnaround-strip'
import { chance, marksOutside, unclearWords } from './clear-words'

const words = (drawing: Drawing) => drawing.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))
const paths = (drawing: Drawing) => drawing.marks.flatMap((mark) => (mark.kind === 'path' ? [mark] : []))

const strip = (daysTaken: readonly number[], widthMm = 160, atLeastDays = 0) =>
  turnaroundStrip({
    vendor: 'Tarn Grinding',
    daysTaken,
    turnaround: turnaround(daysTaken),
    widthMm,
    atLeastDays,
  })

describe('the strip of a vendor’s turnaround', () => {
  it('names median and nine of ten, and says all of it in words', () => {
    const drawing = strip([3, 5, 9])
    expect(drawing.title).toBe('Turnaround of Tarn Grinding')
    expect(drawing.description).toBe('Median 5 days, nine of ten within 9 days, from 3 heads that came back.')
    expect(words(drawing)).toEqual(expect.arrayContaining(['median', 'nine of ten', '0']))
    expect(strip([4]).description).toContain('from 1 head that')
    expect(strip([]).description).toBe('Nothing has come back yet.')
  })

  it('draws one stroke a head, none upon another, also where many took as long', () => {
    for (const daysTaken of [[4, 4, 6], Array.from({ length: 23 }, () => 5)]) {
      const strokes = paths(strip(daysTaken)).find((mark) => mark.stroke?.widthMm === 0.5)
      const tops = [...(strokes?.d ?? '').matchAll(/M([\d.]+ [\d.]+)/g)].map(([, place]) => place)
      expect(tops).toHaveLength(daysTaken.length)
      expect(new Set(tops).size).toBe(daysTaken.length)
    }
  })

  it('every word stands clear of the others and of every mark, for any vendor, at the desk and on a telephone', () => {
    const upTo = chance(2026)
    for (let vendor = 0; vendor < 400; vendor++) {
      const longest = 2 + upTo(vendor % 10 === 0 ? 400 : 60)
      const daysTaken = Array.from({ length: upTo(25) }, () => upTo(longest))
      for (const widthMm of [160, 84]) {
        const drawing = strip(daysTaken, widthMm, vendor % 3 === 0 ? upTo(120) : 0)
        expect([daysTaken, unclearWords(drawing), marksOutside(drawing)]).toEqual([daysTaken, [], []])
      }
    }
  })

  it('leaves room for the days that another picture needs', () => {
    expect(words(strip([3, 5], 160, 40))).toContain('40 days')
  })

  it('is told by shape: nothing but ink', () => {
    const tones = strip([3, 5, 9]).marks.map((mark) => (mark.kind === 'text' ? mark.tone : mark.stroke?.tone))
    expect(new Set(tones)).toEqual(new Set(['ink']))
  })
})

describe('what finds words that are not clear', () => {
  const drawing = strip([3, 5, 9])
  it('finds words moved onto others, and a line drawn through them', () => {
    expect(unclearWords(drawing)).toEqual([])
    const [first, second] = drawing.marks.filter((mark) => mark.kind === 'text')
    const onto = { ...second!, x: first!.x, y: first!.y, anchor: first!.anchor }
    expect(unclearWords({ ...drawing, marks: [first!, onto] })).not.toEqual([])
    const through = {
      kind: 'path',
      d: `M0 ${first!.y - 1}L160 ${first!.y - 1}`,
      fill: null,
      stroke: { tone: 'ink', widthMm: 0.2 },
    } as const
    expect(unclearWords({ ...drawing, marks: [first!, through] })).not.toEqual([])
    expect(unclearWords({ ...drawing, marks: [{ ...first!, x: 200 }] })).not.toEqual([])
  })
})
