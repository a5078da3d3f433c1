import { describe, expect, it } from 'vitest'
import { turnaround } from '@/lib/core/shop/turnaround'
import type { Drawing } from '@/lib/drawing/marks'
import { turnaroundStrip } from '@/lib/drawing/turnaround-strip'

const words = (drawing: Drawing) => drawing.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))
const paths = (drawing: Drawing) => drawing.marks.flatMap((mark) => (mark.kind === 'path' ? [mark] : []))

const strip = (daysTaken: readonly number[], out: { tags: string[]; days: number; late: boolean }[] = []) =>
  turnaroundStrip({ vendor: 'Tarn Grinding', daysTaken, turnaround: turnaround(daysTaken), out })

describe('the strip of a vendor’s turnaround', () => {
  it('names median and nine of ten, and says all of it in words', () => {
    const drawing = strip([3, 5, 9], [{ tags: ['T-0404', 'T-0405'], days: 12, late: true }])
    expect(drawing.title).toBe('Turnaround of Tarn Grinding')
    expect(drawing.description).toBe(
      'Median 5 days, nine of ten within 9 days, from 3 heads that came back. Now: T-0404, T-0405 out 12 days, late.',
    )
    expect(words(drawing)).toEqual(expect.arrayContaining(['median', 'nine of ten', '2 late', '0']))
  })

  it('draws one stroke a head, none upon another', () => {
    const strokes = paths(strip([4, 4, 6])).find((mark) => (mark.d.match(/M/g) ?? []).length === 3)
    const starts = (strokes?.d.match(/M[\d.]+ [\d.]+/g) ?? []).map(String)
    expect(new Set(starts).size).toBe(3)
  })

  it('tells late from in time by shape and word, in ink alone', () => {
    const kinds = [false, true].map((late) => strip([5], [{ tags: ['T-0404'], days: 7, late }]))
    const [inTime, late] = kinds.map(words)
    expect(inTime).toContain('1 out')
    expect(late).toContain('1 late')
    expect(paths(kinds[0]!).map((mark) => mark.d)).not.toEqual(paths(kinds[1]!).map((mark) => mark.d))
    for (const drawing of kinds) {
      const tones = drawing.marks.map((mark) => (mark.kind === 'text' ? mark.tone : (mark.fill ?? mark.stroke?.tone)))
      expect(tones.every((tone) => tone === 'ink' || tone === 'faint' || tone === 'ground')).toBe(true)
    }
  }) // prettier-ignore

  it('stays on its sheet, with nothing back yet and with a year out', () => {
    for (const drawing of [strip([]), strip([0], [{ tags: ['T-0404'], days: 365, late: true }])]) {
      for (const { d } of paths(drawing)) {
        for (const [, x, y] of d.matchAll(/(-?[\d.]+) (-?[\d.]+)/g)) {
          expect(Number(x)).toBeGreaterThanOrEqual(0)
          expect(Number(x)).toBeLessThanOrEqual(drawing.widthMm)
          expect(Number(y)).toBeGreaterThanOrEqual(0)
          expect(Number(y)).toBeLessThanOrEqual(drawing.heightMm)
        }
      }
    }
    expect(strip([]).description).toBe('Nothing has come back yet.')
  })
})
