import { describe, expect, it } from 'vitest'
import type { CastingFacts } from '@/lib/core/casting/figures'
import { consequenceLines } from '@/lib/core/options/consequence-lines'
import { estimateOf } from '@/lib/core/options/estimate'
import { questionOf, type Asked, type BenchCasting } from '@/lib/core/options/question-of'
import { wayTitle } from '@/lib/core/options/way-words'
import { waysOf } from '@/lib/core/options/ways'
import { must } from '@/lib/core/errors'
import { engine, question } from './bench'
import { cutCautionText } from '@/lib/words/cut-cautions'

const facts: CastingFacts = {
  thicknessNewIn: 4.134,
  thicknessLeastIn: 4.114,
  intakeValves: 2,
  exhaustValves: 1,
  intakeValveIn: 1.5,
  exhaustValveIn: 1.6,
  intakeValveAngleDeg: 0,
  exhaustValveAngleDeg: 0,
  intakeRecessionLeastIn: 0.024,
  exhaustRecessionLeastIn: 0.03,
  injectorProtrusionMostIn: 0.075,
}
const casting: BenchCasting = {
  ...{ id: 'c', name: 'Ferrow D2', chambers: 2, chamberShape: 'flat-deck', deepEdge: 'exhaust', facts },
  ...{ learned: null, variants: [], flowed: [] },
}
const asked: Asked = {
  ...{ presentCc: [], measured: false, used: true, goneIn: 0.004, targetCc: 58, stopAtIn: null, sinkIn: null },
  ...{ classFlatOnly: false, classMinCc: null, classMaxCutIn: null, engine, figures: {} },
  thicknessIn: 4.12,
  recessionIn: { intake: 0.036, exhaust: 0.039 },
  protrusionIn: 0.06,
}
const of = (more: Partial<Asked> = {}) => questionOf({ ...asked, ...more }, casting, question().shop)

describe('a flat-deck head on the telephone', () => {
  // 4.134 − 0.004 = 4.130 now; to 4.120 is 10 thou.
  it('is cut to the wanted thickness, whatever target was typed before its casting was picked', () => {
    const [way, ...others] = waysOf(of())
    expect(others).toEqual([])
    expect(way && wayTitle(way)).toBe('Flat cut to 4.1200 in thick, 10 thou')
    expect(way?.finishedCc).toBeNull()
    const steps = way?.steps.map(({ stepId }) => stepId) ?? []
    expect(steps).toEqual(expect.arrayContaining(['thickness', 'seat-before', 'flat-cut', 'seat-after', 'finished']))
    expect(steps).not.toContain('chambers')
  })

  it('goes by its thickness now where that was measured', () => {
    const now = (more: Partial<Asked>) => waysOf(of({ thicknessNowIn: 4.127, ...more }))[0]
    // 4.127 to 4.120 is 7 thou, whatever else was removed; nobody has to know that.
    const used = now({ goneIn: null })
    expect(used && wayTitle(used)).toBe('Flat cut to 4.1200 in thick, 7 thou')
    // 4.134 − 4.127 = 7 thou gone before, 14 in all.
    expect(used?.start.heads[0]?.removedBeforeIn).toBeCloseTo(0.007, 12)
    expect(used?.worked?.plan.totalRemovedIn).toBeCloseTo(0.014, 12)
    // Thicker than new: nothing is gone, not less than nothing.
    expect(now({ goneIn: null, thicknessNowIn: 4.135 })?.start.heads[0]?.removedBeforeIn).toBe(0)
  })

  it('says of each valve and injector what it becomes, and what is past a limit', () => {
    const [way] = waysOf(of())
    if (!way?.worked) throw new Error('not worked out')
    const groups = consequenceLines({
      cut: { ...way.worked.record, milledWidthIn: undefined },
      deepEdge: 'exhaust',
      follows: way.worked.follows,
      ptvLeastIn: { intake: 0.08, exhaust: 0.1 },
      sealingMarginIn: 0.01,
      flatDeck: way.worked.flatDeck,
    })
    expect(groups.map(({ title }) => title)).not.toContain('Seats')
    const lines = groups.find(({ title }) => title.startsWith('Valves and injectors'))?.lines ?? []
    // 36 − 10 = 26, at least 24; 39 − 10 = 29, at least 30: one short; 60 + 10 = 70, at most 75.
    expect(lines.map(({ value, caution }) => [value, caution])).toEqual([
      ['0.0260 in, was 0.0360', false],
      ['0.0260 in, was 0.0360', false],
      ['0.0290 in, was 0.0390', true],
      ['0.0260 in, was 0.0360', false],
      ['0.0260 in, was 0.0360', false],
      ['0.0290 in, was 0.0390', true],
      ['0.0700 in, was 0.0600', false],
    ])
    expect(lines[2]?.note).toBe('under by 1 thou; engine maker’s minimum 0.0300 in; sink its seat 1 thou more')
    expect(way.cautions.map(cutCautionText).join('\n')).toContain(
      'without seat work no deeper than 9 thou, by the valve of chamber 1 exhaust',
    )
  })

  it('seat work of 2 thou puts it right', () => {
    const [way] = waysOf(of({ sinkIn: 0.002 }))
    expect(way?.worked?.record.cautions.filter(({ code }) => code === 'valve-past')).toEqual([])
  })

  it('a clean-up without a thickness; nothing to answer without both', () => {
    expect(waysOf(of({ thicknessIn: null, stopAtIn: 0.008 })).map(wayTitle)).toEqual(['Clean-up, stop at 8 thou'])
    expect(waysOf(of({ thicknessIn: null }))).toEqual([])
  })

  it('thinner than the minimum is ruled out with the figure', () => {
    expect(waysOf(of({ thicknessIn: 4.11 }))[0]?.ruledOut).toContain('the minimum is 4.114 in')
  })

  it('its estimate has no line of cc that a chamber would have', () => {
    const estimate = must(estimateOf(of(), 'own:flat', null))
    const labels = estimate.lines.map(({ label }) => label)
    expect(labels).toEqual([
      ...['Flat part', 'Thickness wanted', 'Thickness now', 'Thickness left'],
      ...['Valves below the deck', 'Injector protrusion', 'Valve pockets'],
    ])
    // π/4·16.387064·(2·1.5²·36 + 1.6²·39)/1000 before, each valve 10 less after.
    const pocket = (intake: number, exhaust: number) =>
      (Math.PI / 4) * 16.387064 * (4.5 * intake + 2.56 * exhaust) * 0.001
    expect(estimate.lines.at(-1)).toMatchObject({
      value: `${pocket(26, 29).toFixed(2)} cc`,
      note: `over each piston; before ${pocket(36, 39).toFixed(2)}`,
    })
  })
})
