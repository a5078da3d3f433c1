import { describe, expect, it } from 'vitest'
import type { SpecChambers } from '@/lib/core/spec/spec-sheet'
import { chamberBars } from '@/lib/drawing/chamber-bars'
import type { Drawing, PathMark } from '@/lib/drawing/marks'
import { spec } from '@/tests/pdf/sample-papers'

const size = { widthMm: 116, heightMm: 40 }
const sample = spec.chambers ?? expect.unreachable()

const chambers = (
  before: readonly (number | null)[],
  after: readonly (number | null)[],
  more: Partial<SpecChambers> = {},
): SpecChambers => ({
  ...sample,
  rows: before.map((cc, i) => ({
    chamber: String(i + 1),
    beforeCc: cc?.toFixed(1) ?? null,
    afterCc: after[i]?.toFixed(1) ?? null,
    remark: '',
  })),
  picture: { beforeCc: before, afterCc: after, target: { cc: 60, toleranceCc: 0.5 } },
  ...more,
})

const draw = (data: SpecChambers) => chamberBars(data, size)
const texts = ({ marks }: Drawing) => marks.flatMap((mark) => (mark.kind === 'text' ? [mark] : []))
const words = (drawing: Drawing) => texts(drawing).map((mark) => mark.text)
const paths = ({ marks }: Drawing) => marks.filter((mark): mark is PathMark => mark.kind === 'path')
const numbers = (d: string) => (d.match(/-?[\d.]+/g) ?? []).map(Number)

/** Middles of the round points of one fill, from left to right: an ellipse is four curves. */
function middles(drawing: Drawing, fill: 'ink' | 'ground'): [x: number, y: number][] {
  const circles = paths(drawing)
    .filter((mark) => mark.fill === fill && mark.d.includes('C'))
    .flatMap((mark) => mark.d.split('Z').filter((part) => part !== ''))
  return circles.map((d) => {
    const all = numbers(d)
    const of = (parity: number) => all.filter((_, i) => i % 2 === parity)
    const mid = (list: number[]) => (Math.min(...list) + Math.max(...list)) / 2
    return [mid(of(0)), mid(of(1))]
  })
}

/** The two edges of the band: the only faint stroke of a fifth of a millimetre. */
function bandOf(drawing: Drawing): [top: number, bottom: number] {
  const edge = paths(drawing).find(({ stroke }) => stroke?.tone === 'faint' && stroke.widthMm === 0.2)
  const [, top = NaN, , , , bottom = NaN] = numbers(edge?.d ?? '')
  return [top, bottom]
}

describe('chambers before and after', () => {
  it('puts every volume on one scale with the band of the target', () => {
    const drawing = draw(chambers([64, 65], [60, 60.5]))
    const [top, bottom] = bandOf(drawing)
    // The band is 59.5 to 60.5: one cc. What a cc is follows from it.
    const mmPerCc = bottom - top
    const at = (cc: number) => bottom - (cc - 59.5) * mmPerCc
    const near = (points: [number, number][], ccs: number[]) =>
      points.forEach(([, y], i) => expect(Math.abs(y - at(ccs[i] ?? NaN))).toBeLessThan(0.05))
    expect(middles(drawing, 'ground')).toHaveLength(2)
    near(middles(drawing, 'ground'), [64, 65])
    near(middles(drawing, 'ink'), [60, 60.5])
  })

  it('has each figure as it was typed, the chamber’s number, the band and both sides named', () => {
    const drawing = draw(chambers([64, 65], [60, 60.5]))
    expect(words(drawing)).toEqual(
      expect.arrayContaining(['64.0', '65.0', '60.0', '60.5', '1', '2', 'target 60', '± 0.5 cc', 'before', 'after']),
    )
    expect(drawing.title).toBe('Chambers before and after, cc')
    expect(drawing.description).toBe(
      'Chamber 1: 64.0 before, 60.0 after. Chamber 2: 65.0 before, 60.5 after. Target 60.0 cc, each within 0.5 cc. Measured alike before and after.',
    )
  })

  it('joins by a line only what was measured alike; dashes and strokes say otherwise, and so do words', () => {
    const lines = (data: SpecChambers) =>
      paths(draw(data)).filter(({ stroke }) => stroke?.tone === 'ink' && stroke.widthMm === 0.4)
    const alike = chambers([64, 65], [60, 60.5])
    expect(lines(alike)).toHaveLength(1)
    expect(words(draw(alike)).join(' ')).not.toMatch(/like for like/)
    const unlike = { ...alike, afterWith: 'shop’s valves' }
    expect(lines(unlike)).toHaveLength(0)
    expect(words(draw(unlike))).toContain('not like for like: other valves or another plug')
    expect(draw(unlike).description).toContain('not like for like')
    const unsure = { ...alike, beforeWith: '' }
    expect(lines(unsure)).toHaveLength(0)
    expect(paths(draw(unsure)).some(({ stroke }) => stroke?.dashMm)).toBe(true)
    expect(words(draw(unsure)).join(' ')).toContain('may not be like for like')
  })

  it('does not blow up a scatter of a tenth to fill the picture', () => {
    const drawing = draw(
      chambers([60, 60.1], [60, 60.1], { picture: { beforeCc: [60, 60.1], afterCc: [60, 60.1], target: null } }),
    )
    const [one, other] = middles(drawing, 'ink')
    expect(Math.abs((one?.[1] ?? NaN) - (other?.[1] ?? NaN))).toBeLessThan(3)
    expect(words(drawing).join(' ')).not.toContain('target')
  })

  it('leaves out what was not measured, and is empty without numbers', () => {
    const drawing = draw(chambers([64, null], [null, 60]))
    expect(middles(drawing, 'ground')).toHaveLength(1)
    expect(middles(drawing, 'ink')).toHaveLength(1)
    expect(drawing.description).toContain('Chamber 2: not measured before, 60.0 after.')
    const { picture: _, ...bare } = sample
    expect(draw(bare).marks).toEqual([])
    expect(draw(bare).description).not.toBe('')
  })

  it('twelve chambers stay inside their edges, no figure on its neighbour', () => {
    const twelve = Array.from({ length: 12 }, (_, i) => 60 + i / 10)
    const drawing = chamberBars(
      chambers(
        twelve.map((cc) => cc + 4),
        twelve,
      ),
      { widthMm: 180, heightMm: 40 },
    )
    for (const { x, y } of texts(drawing)) {
      expect(x).toBeGreaterThan(0)
      expect(x).toBeLessThan(180)
      expect(y).toBeGreaterThan(0)
      expect(y).toBeLessThan(40)
    }
    const figures = texts(drawing).filter(({ text, bold }) => bold && /^\d+\.\d$/.test(text))
    expect(figures).toHaveLength(12)
    figures.slice(1).forEach(({ x, sizeMm, text }, i) => {
      expect(x - (figures[i]?.x ?? NaN)).toBeGreaterThan(text.length * sizeMm * 0.5 - 0.01)
    })
  })

  it('is told by shape: nothing but ink, its faint tone and the ground', () => {
    const tones = draw(sample).marks.flatMap((mark) =>
      mark.kind === 'text' ? [mark.tone] : [mark.fill, mark.stroke?.tone],
    )
    expect(tones.filter((tone) => tone === 'brass' || tone === 'stop')).toEqual([])
  })
})
