import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { CutOption } from '@/lib/core/options/bench-types'
import { wayTitle } from '@/lib/core/options/way-words'
import { waysOf } from '@/lib/core/options/ways'
import { holding, question, start, wedge } from './bench'

const named = (ways: readonly CutOption[]) => ways.map(({ start: { id }, kind }) => `${id} ${kind}`)
const wayOf = (ways: readonly CutOption[], kind: CutOption['kind']): CutOption => {
  const found = ways.find((way) => way.kind === kind)
  if (!found) throw new Error(`no way of kind ${kind}`)
  return found
}

describe('all ways to a target', () => {
  it('3 cc at 6 thou per cc: 18 thou flat first, then what goes to a vendor', () => {
    const ways = waysOf(question())
    expect(named(ways)).toEqual(['own flat', 'own angle-flat', 'own angle'])
    expect(wayTitle(ways[0] as CutOption)).toBe('Flat cut, 18 thou')
    expect(ways[0]?.finishedCc).toBeCloseTo(61, 9)
    expect(ways[0]?.days).toBe(0)
    expect(ways[1]?.days).toBe(9)
    expect(ways[1]?.why).toMatch(/more steps?$/)
  })

  it('leaves the shop’s margin flat: 1 cc is 6 thou, the other 12 thou at the centre are 12/0.635 = 18.90 at the edge', () => {
    const { worked } = wayOf(waysOf(question()), 'angle-flat')
    // Set down to the half thou a mill is set to: 18.5; flat 18 − 18.5·0.635 = 6.2525 thou.
    expect(worked?.record.angleIn).toBeCloseTo(0.0185, 9)
    expect(worked?.record.flatIn).toBeCloseTo(0.0062525, 9)
  })

  it('10 cc: 60 thou flat, or 60/0.635 = 94.49 thou at the edge (0.773°): no more than one degree', () => {
    const ways = waysOf(question({ targetCc: 54 }))
    expect(wayOf(ways, 'flat').worked?.record.flatIn).toBeCloseTo(0.06, 9)
    const angle = wayOf(ways, 'angle').worked?.record
    expect(angle?.angleIn).toBeCloseTo(0.0944882, 6)
    expect(angle?.angleDeg).toBeCloseTo((Math.atan(0.0944882 / 7) * 180) / Math.PI, 4)
    // Above half a degree sources differ, and nothing is left for us: two cautions put it after the others.
    expect(wayOf(ways, 'angle').cautions).toHaveLength(2)
    expect(ways.at(-1)?.kind).toBe('angle')
  })

  it('class flat only: the angles are ruled out and come last', () => {
    const ways = waysOf(question({ classFlatOnly: true }))
    expect(named(ways)[0]).toBe('own flat')
    for (const kind of ['angle-flat', 'angle'] as const) expect(wayOf(ways, kind).ruledOut).not.toBe('')
    expect(ways.slice(1).every(({ why }) => why === 'last: it is ruled out')).toBe(true)
  })

  it('class’s deepest cut 15 thou: 18 flat is ruled out, and so is every angle, which is deeper still at its edge', () => {
    const ways = waysOf(question({ classMaxCutIn: 0.015 }))
    expect(ways.every(({ ruledOut }) => ruledOut !== '')).toBe(true)
  })

  it('class minimum: no way may finish under it', () => {
    expect(waysOf(question({ targetCc: 61, classMinCc: 62 })).every(({ ruledOut }) => ruledOut !== '')).toBe(true)
  })

  it('land under the intake port: a flat cut may take 100 thou of it, an angle cut takes none there', () => {
    // 18 cc are 108 thou flat; with w at the exhaust edge the intake edge goes down by the flat part alone.
    const deep = question({
      targetCc: 46,
      starts: [start({ casting: { ...wedge, largestAngleDeg: 2, thicknessLeastIn: 4.2 } })],
    })
    const ways = waysOf(deep)
    expect(wayOf(ways, 'flat').ruledOut).toContain('land')
    const tilted = wayOf(ways, 'angle-flat')
    expect(tilted.ruledOut).toBe('')
    expect(tilted.worked?.record.flatIn).toBeLessThanOrEqual(0.1)
  })

  it('thickness: 200 thou may go at the deep edge, counted from what is there', () => {
    const thin = start({
      heads: [{ tag: 'the head', chambersCc: [64], thicknessIn: 4.31, removedBeforeIn: 0.19 }],
    })
    const ways = waysOf(question({ starts: [thin] }))
    expect(wayOf(ways, 'flat').ruledOut).toContain('thick')
  })

  it('target above: opened by the difference, nothing cut', () => {
    const ways = waysOf(question({ targetCc: 66.5 }))
    expect(named(ways)).toEqual(['own open'])
    expect(wayTitle(ways[0] as CutOption)).toBe('Open the chambers by 2.5 cc')
    expect(ways[0]?.steps.map(({ stepId }) => stepId)).toContain('open-chamber')
  })

  it('within tolerance: leave it comes first, and a finer cut stays possible', () => {
    const ways = waysOf(question({ targetCc: 63.7 }))
    expect(named(ways)[0]).toBe('own leave')
    expect(ways[0]?.steps).toEqual([])
    expect(wayOf(ways, 'flat').worked?.record.flatIn).toBeCloseTo(0.0018, 9)
  })

  it('the seats to be sunk give volume back: 0.010 in at 2.05 and 1.60 is 0.54 + 0.33 cc, so the cut takes as much more', () => {
    const seated = start({ casting: { ...wedge, intakeValveIn: 2.05, exhaustValveIn: 1.6 } })
    const { worked } = wayOf(waysOf(question({ sinkIn: 0.01, starts: [seated] })), 'flat')
    expect(worked?.record.seatWorkGivesCc).toBeCloseTo(0.87, 2)
    expect(worked?.record.flatIn).toBeCloseTo((3 + 0.87) * 0.006, 4)
    expect(worked?.record.predictedFinishedCc).toBeCloseTo(61, 9)
  })

  it('uneven chambers: the largest governs when they are to be equalised, the rest are opened', () => {
    const uneven = start({ heads: holding(64, 64, 66, 64), presentNominal: false })
    const way = wayOf(waysOf(question({ starts: [uneven] })), 'equalise')
    // The largest, 66, goes to 61: 5 cc, 30 thou; the others stand at 59 and are opened by 2.
    expect(way.worked?.record.flatIn).toBeCloseTo(0.03, 9)
    expect(way.opensCc).toBeCloseTo(2, 9)
    expect(way.steps.map(({ stepId }) => stepId)).toContain('open-chamber')
  })

  it('without a target: a clean-up to its stop-at limit, or nothing at all', () => {
    expect(waysOf(question({ targetCc: null }))).toEqual([])
    const ways = waysOf(question({ targetCc: null, stopAtIn: 0.008 }))
    expect(named(ways)).toEqual(['own clean-up'])
    expect(wayTitle(ways[0] as CutOption)).toBe('Clean-up, stop at 8 thou')
  })

  it('castings to be bought stand after the customer’s own, with lead time and price', () => {
    const stock = start({ id: 'stock', supply: 'stock', leadDays: 4, costMinor: 60_000 })
    const cut = start({
      id: 'cut',
      supply: 'special',
      cutByMaker: true,
      leadDays: 24,
      costMinor: 75_000,
      heads: holding(61),
    })
    const prices = { 'flat-cut': 9_000 } as const
    const ways = waysOf(question({ starts: [cut, stock, start()], shop: { ...question().shop, prices } }))
    expect(named(ways)[0]).toBe('own flat')
    const bought = ways.findIndex(({ start: { supply } }) => supply !== 'own')
    expect(ways.slice(0, bought).every(({ start: { supply } }) => supply === 'own')).toBe(true)
    expect(ways[bought]?.why).toBe('another casting must be bought')
    const ready = ways.find(({ start: { id } }) => id === 'cut') as CutOption
    expect(wayTitle(ready)).toBe('Bought in, already cut')
    expect([ready.days, ready.priceMinor]).toEqual([24, 75_000])
    const stockFlat = ways.find(({ id }) => id === 'stock:flat') as CutOption
    expect([stockFlat.days, stockFlat.priceMinor]).toEqual([4, 69_000])
    expect(stockFlat.unpriced.length).toBe(stockFlat.steps.length - 1)
    const stockAngle = ways.find(({ id }) => id === 'stock:angle-flat') as CutOption
    expect(stockAngle.days).toBe(13)
  })

  it('every way that is not ruled out reaches the target, and keeps every limit', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 40, max: 80, noNaN: true }),
        fc.double({ min: 40, max: 80, noNaN: true }),
        fc.double({ min: 0.5, max: 12, noNaN: true }),
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        (nowCc, targetCc, thouPerCc, share) => {
          const casting = { ...wedge, openingCentreIn: share * 7 }
          const ways = waysOf(question({ targetCc, starts: [start({ casting, thouPerCc, heads: holding(nowCc) })] }))
          for (const { ruledOut, finishedCc, worked, kind } of ways) {
            if (ruledOut !== '') continue
            const toleranceCc = kind === 'leave' ? 0.5 + 1e-9 : 1e-6
            expect(Math.abs((finishedCc ?? NaN) - targetCc)).toBeLessThanOrEqual(toleranceCc)
            if (!worked) continue
            const { flatIn, angleIn, angleDeg } = worked.record
            // By the rate and the lever, worked here: f + w·s takes (V − T) cc.
            if (kind !== 'equalise')
              expect(flatIn + angleIn * share).toBeCloseTo(((nowCc - targetCc) * thouPerCc) / 1000, 6)
            expect(angleDeg ?? 0).toBeLessThanOrEqual(1 + 1e-6)
            expect(flatIn + angleIn).toBeLessThanOrEqual(0.2 + 0.00026)
            expect(flatIn).toBeLessThanOrEqual(0.1 + 0.00026)
          }
        },
      ),
      { numRuns: 300 },
    )
  })
})
