import { describe, expect, it } from 'vitest'
import { chamberTrendDrawing, type TrendStage } from '@/lib/drawing/chamber-trend'
import type { Drawing, PathMark } from '@/lib/drawing/marks'

const stage = (label: string, ccs: readonly (number | null)[], more: Partial<TrendStage> = {}): TrendStage => ({
  label,
  jobNumber: '26-0007',
  ccs,
  texts: ccs.map((cc) => (cc === null ? null : cc.toFixed(1))),
  fitted: 'own valves, own plug',
  target: null,
  ...more,
})

const draw = (...stages: TrendStage[]): Drawing =>
  chamberTrendDrawing(stages, { title: 'Chamber volumes, cc', widthMm: 100 })
const words = ({ marks }: Drawing) => marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))
const lines = ({ marks }: Drawing, widthMm: number) =>
  marks.filter((mark): mark is PathMark => mark.kind === 'path' && mark.stroke?.widthMm === widthMm)

const joinMm = 0.45
const unsureMm = 0.3

describe('chamber volumes over the visits', () => {
  it('names each chamber, stage and job, and puts its figure at every point', () => {
    const drawing = draw(stage('as came', [64.2, 63.8]), stage('finished', [61, 60.9], { jobNumber: '26-0009' }))
    expect(words(drawing)).toEqual(
      expect.arrayContaining([
        'no. 1',
        'no. 2',
        'as came',
        'finished',
        'job 26-0007',
        'job 26-0009',
        '64.2',
        '63.8',
        '61.0',
        '60.9',
      ]),
    )
    expect(drawing.description).toBe(
      'Chamber 1: 64.2 cc as came (job 26-0007), 61.0 cc finished (job 26-0009). ' +
        'Chamber 2: 63.8 cc as came (job 26-0007), 60.9 cc finished (job 26-0009).',
    )
  })

  it('draws the larger volume higher, on one scale for all chambers', () => {
    const drawing = draw(stage('as came', [64, 60]))
    const at = (text: string) => {
      const mark = drawing.marks.find((one) => one.kind === 'text' && one.text === text)
      return mark?.kind === 'text' ? mark.y : NaN
    }
    // The same strip one lower, and the least at its bottom where the most is at the top: more than a strip apart.
    expect(at('60.0') - at('64.0')).toBeGreaterThan(15)
    expect(at('60.0') - at('64.0')).toBeLessThan(30)
  })

  it('joins what was measured alike, dashes what nobody noted, breaks where valves or plug differ', () => {
    const alike = draw(stage('as came', [64]), stage('finished', [61]))
    expect(lines(alike, joinMm)).toHaveLength(1)
    const unsure = draw(stage('as came', [64]), stage('at size', [61], { fitted: '' }))
    expect(lines(unsure, joinMm)).toHaveLength(0)
    expect(lines(unsure, unsureMm).some(({ stroke }) => stroke?.dashMm)).toBe(true)
    const differs = draw(stage('as came', [64]), stage('finished', [61], { fitted: 'shop valves, own plug' }))
    expect(lines(differs, joinMm)).toHaveLength(0)
    expect(lines(differs, 0.35)).toHaveLength(1)
  })

  it('leaves out a chamber that was not read, and hatches the target where there is one', () => {
    const target = { cc: 61, toleranceCc: 0.5 }
    const plain = draw(stage('as came', [64, null]), stage('finished', [61, 60.9]))
    const banded = draw(stage('as came', [64, null], { target }), stage('finished', [61, 60.9], { target }))
    expect(words(plain).filter((word) => /^\d/.test(word))).toEqual(['64.0', '61.0', '60.9'])
    expect(lines(plain, 0.15)).toHaveLength(0)
    // Hatch and edges, a strip each.
    expect(lines(banded, 0.15)).toHaveLength(4)
  })

  it('stays inside its sheet, with one stage, all alike, and none at all', () => {
    for (const drawing of [
      draw(),
      draw(stage('as came', [64, 64])),
      draw(...Array.from({ length: 9 }, (_, i) => stage(`stage ${i}`, [60 + i]))),
    ]) {
      for (const mark of drawing.marks) {
        const numbers = mark.kind === 'text' ? [mark.x, mark.y] : (mark.d.match(/-?[\d.]+/g) ?? []).map(Number)
        numbers.forEach((value, place) => {
          expect(value).toBeGreaterThanOrEqual(0)
          expect(value).toBeLessThanOrEqual(place % 2 === 0 ? drawing.widthMm : drawing.heightMm)
        })
      }
    }
  })
})
