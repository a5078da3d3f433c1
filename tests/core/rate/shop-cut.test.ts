import { describe, expect, it } from 'vitest'
import { shopCutOf, type ShopCut } from '@/lib/core/rate/shop-cut'
import type { StepId } from '@/lib/core/route/step-ids'
import { ticked, visit, type Told } from './told-visit'

const four = (...values: number[]) => Object.fromEntries(values.map((value, at) => [String(at + 1), value]))
const before: Told = ['read', 'chambers', 'cc', four(64.2, 63.8, 64.1, 63.9)]
const shopValves: Told = ['read', 'chambers', 'valves-used', { '': 'shop' }]
const depth = (valueIn: number): Told => ['read', 'flat-cut', 'cut-depth', { '': valueIn }]
const finished: Told = ['read', 'finished', 'cc', four(60.9, 61.1, 61.2, 60.8)]
const corners = (stepId: StepId, intake: number, exhaust: number): Told => [
  'read',
  stepId,
  'thickness',
  { 'intake-1': intake, 'exhaust-1': exhaust, 'intake-2': intake, 'exhaust-2': exhaust },
]

const cutOf = (...told: Told[]): ShopCut => {
  const cut = shopCutOf(visit(ticked(told)))
  if (!cut) throw new Error('Something was cut.')
  return cut
}

describe('what one visit’s cuts took', () => {
  it('a flat cut: 64.0 cc less 18 thou is 61.0 cc, four chambers each read once', () => {
    const cut = cutOf(before, shopValves, depth(0.018), finished)
    expect(cut.edges).toEqual({ shallowIn: 0.018, deepIn: 0.018 })
    // (64.2 + 63.8 + 64.1 + 63.9)/4 = 64.0; (60.9 + 61.1 + 61.2 + 60.8)/4 = 61.0.
    expect(cut.before?.cc).toBeCloseTo(64, 9)
    expect(cut.after?.cc).toBeCloseTo(61, 9)
    // One reading: √(0.3² + 0.2²/12) = 0.30551; the mean of four: half of that.
    expect(cut.before?.uCc).toBeCloseTo(0.30551 / 2, 4)
    expect(cut.whyNot).toBe('')
  })

  it('nothing cut, nothing told; a tick that was taken back cut nothing', () => {
    expect(shopCutOf(visit([before, finished]))).toBeNull()
    expect(shopCutOf(visit([before, ['tick', 'flat-cut'], ['undo', 'flat-cut'], finished]))).toBeNull()
    expect(cutOf(before, ['tick', 'flat-cut'], finished)).toMatchObject({
      edges: null,
      whyNot: 'its depth was not measured',
    })
  })

  it('the chamber read at size stands for all while nothing is finished: each loses alike', () => {
    // Chamber 1: 64.2 → 61.2.
    const cut = cutOf(before, depth(0.018), ['read', 'flat-cut', 'cc', { 'at-stop': 61.9, 'at-size': 61.2 }])
    expect([cut.before?.cc, cut.after?.cc, cut.whyNot]).toEqual([64.2, 61.2, ''])
    expect(cut.before?.uCc).toBeCloseTo(0.30551, 4)
  })

  it('a reading at the stop counts while no more was cut after it, and not once more was', () => {
    const atStop: Told = ['read', 'flat-cut', 'cc', { 'at-stop': 61.6 }]
    expect(cutOf(before, depth(0.0155), atStop)).toMatchObject({ after: { cc: 61.6 }, whyNot: '' })
    expect(cutOf(before, depth(0.0155), atStop, depth(0.018)).whyNot).toBe('no cc was read after the cut')
  })

  it('only the chambers that were read both times are held against each other', () => {
    // Chambers 1 and 2 before: (64.2 + 63.8)/2 = 64.0.
    const cut = cutOf(before, depth(0.018), ['read', 'finished', 'cc', four(61.0, 61.2)])
    expect(cut.before?.cc).toBeCloseTo(64, 9)
    expect(cut.after?.cc).toBeCloseTo(61.1, 9)
  })

  it('repeats of a chamber are one chamber, known the better', () => {
    const again: Told = ['read', 'chambers', 'cc', four(64.4)]
    const cut = cutOf(before, again, depth(0.018), ['read', 'finished', 'cc', four(61.2)])
    expect(cut.before?.cc).toBeCloseTo(64.3, 9) // (64.2 + 64.4)/2
    // s_p is no less than the default of 0.3, two of them: √(0.045 + 0.04/12) = 0.21985.
    expect(cut.before?.uCc).toBeCloseTo(0.21985, 5)
  })
})

describe('how deep a cut was', () => {
  it('an angle cut in house: both edges as read, the flat part on top', () => {
    const angle: Told = ['read', 'angle-cut', 'edge-depth', { intake: 0, exhaust: 0.063 }]
    expect(cutOf(before, angle, depth(0.02), finished).edges).toEqual({ shallowIn: 0.02, deepIn: 0.083 })
    const shallowAtExhaust = visit([before, angle, depth(0.02), finished], {
      deck: { deepEdge: 'intake', milledWidthIn: 6, deckLengthIn: 20, inset: { edgeIn: 0, endIn: 0 } },
    })
    expect(shopCutOf(shallowAtExhaust)?.edges).toEqual({ shallowIn: 0.083, deepIn: 0.02 })
  })

  it('a vendor’s angle cut by the corners on arrival, our flat cut by touch-off', () => {
    const cut = cutOf(
      before,
      corners('thickness', 4.25, 4.25),
      ['back', ['angle-cut']],
      // 63 thou over 6 in leans 0.6016°; a gauge on the new deck reads t·cos φ: 4.25 and 4.187 times 0.99994488.
      corners('arrival-figures', 4.249766, 4.186769),
      depth(0.02),
      finished,
    )
    expect(cut.edges?.shallowIn).toBeCloseTo(0.02, 5)
    expect(cut.edges?.deepIn).toBeCloseTo(0.083, 5)
    expect(cut.whyNot).toBe('')
  })

  it('what the order wanted of an angle cut that nobody measured is no depth', () => {
    const told: Told[] = [before, ['back', ['angle-cut'], { angleIn: 0.063 }], depth(0.02), finished]
    expect(cutOf(...told)).toMatchObject({ edges: null, whyNot: 'its depth was not measured' })
    // Corners at the end say it all at once.
    const late = cutOf(corners('thickness', 4.25, 4.25), ...told, corners('finished', 4.229767, 4.16677))
    expect(late.edges?.shallowIn).toBeCloseTo(0.02, 5)
    expect(late.edges?.deepIn).toBeCloseTo(0.083, 5)
    expect(late.whyNot).toBe('')
  })

  it('without the deck’s size the corners of each edge say what went there', () => {
    const told = [
      before,
      corners('thickness', 4.25, 4.25),
      ['back', ['angle-cut']] as const,
      corners('arrival-figures', 4.248, 4.19),
    ]
    const cut = shopCutOf(
      visit(told, { deck: { deepEdge: 'exhaust', milledWidthIn: null, deckLengthIn: null, inset: null } }),
    )
    expect(cut?.edges?.shallowIn).toBeCloseTo(0.002, 9)
    expect(cut?.edges?.deepIn).toBeCloseTo(0.06, 9)
  })
})

describe('corners and touch-off of a cut in house', () => {
  const told = (after: Told): Told[] => [before, corners('thickness', 4.25, 4.25), depth(0.018), finished, after]
  it('four sound corners say the depth', () => {
    const cut = cutOf(...told(corners('finished', 4.2305, 4.2305)))
    expect(cut.edges?.deepIn).toBeCloseTo(0.0195, 6)
    expect(cut.depthBy).toBe('corners')
  })

  it('three corners, or one that does not lie with the others, leave it to the touch-off', () => {
    const slip: Told = [
      'read',
      'finished',
      'thickness',
      { 'intake-1': 4.2305, 'exhaust-1': 4.2305, 'intake-2': 4.2305, 'exhaust-2': 4.3305 },
    ]
    const three: Told = [
      'read',
      'finished',
      'thickness',
      { 'intake-1': 4.2305, 'exhaust-1': 4.2305, 'intake-2': 4.2305 },
    ]
    for (const after of [slip, three])
      expect(cutOf(...told(after))).toMatchObject({ edges: { deepIn: 0.018 }, depthBy: 'touch-off', whyNot: '' })
  })

  it('a vendor’s cut with such a corner is not measured, and says so', () => {
    const told = [before, corners('thickness', 4.25, 4.25), ['back', ['angle-cut']] as const]
    const slip: Told = [
      'read',
      'arrival-figures',
      'thickness',
      { 'intake-1': 4.25, 'exhaust-1': 4.19, 'intake-2': 4.25, 'exhaust-2': 4.29 },
    ]
    expect(cutOf(...told, slip, finished).whyNot).toBe('one of its corners does not lie with the other three')
  })

  it('what is not ticked teaches nothing', () => {
    const open = shopCutOf(visit([before, ['tick', 'chambers'], depth(0.018), finished, ['tick', 'finished']]))
    expect(open?.whyNot).toBe('flat cut is not ticked')
    const early = shopCutOf(visit([before, ['tick', 'chambers'], depth(0.018), finished, ['tick', 'flat-cut']]))
    expect(early?.whyNot).toBe('measure finished is not ticked')
  })

  it('with seat work between two passes the longer stretch teaches', () => {
    const atStop = (cc: number): Told => ['read', 'flat-cut', 'cc', { 'at-stop': cc }]
    // 12 thou took 64.2 − 62.2 of chamber 1; after the seat work 6 more were cut.
    const cut = cutOf(before, depth(0.012), atStop(62.2), ['tick', 'seat-work'], depth(0.018), finished)
    expect(cut).toMatchObject({ whyNot: '', edges: { shallowIn: 0.012 }, before: { cc: 64.2 }, after: { cc: 62.2 } })
  })
})

describe('like for like', () => {
  const flush: Told = ['read', 'finished', 'plug-used', { '': 'flush' }]
  const shopPlug: Told = ['read', 'chambers', 'plug-used', { '': 'shop' }]
  const rules: readonly (readonly [why: string, told: readonly Told[]])[] = [
    ['', [before, depth(0.018), finished]],
    ['', [before, shopValves, depth(0.018), finished, ['read', 'finished', 'valves-used', { '': 'shop' }]]],
    ['', [['tick', 'seat-work'], ['tick', 'port'], before, depth(0.018), finished]],
    ['', [before, depth(0.018), finished, ['tick', 'seat-work']]],
    ['', [before, depth(0.018), ['start', 'seat-work'], finished]],
    ['', [before, depth(0.018), ['tick', 'seat-work'], ['undo', 'seat-work'], finished]],
    ['', [before, depth(0.018), ['tick', 'deburr'], ['tick', 'bolt-seats'], ['tick', 'intake'], finished]],
    // Opened before the cut: its own cc are the ones of before.
    [
      '',
      [before, ['read', 'open-chamber', 'cc', four(66, 66, 66, 66)], ['tick', 'open-chamber'], depth(0.018), finished],
    ],
    // Read again after the port work: only the later repeat counts.
    ['', [before, ['tick', 'port'], before, depth(0.018), finished]],
    // Read again after the seat work: only the earlier repeat counts.
    ['', [before, depth(0.018), finished, ['tick', 'seat-work'], finished]],
    // The chamber at size was read before the seat work: that is a pair.
    ['', [before, depth(0.018), ['read', 'flat-cut', 'cc', { 'at-size': 61.2 }], ['tick', 'seat-work'], finished]],
    ['seat work between the two cc', [before, depth(0.018), ['tick', 'seat-work'], finished]],
    ['seat work between the two cc', [before, depth(0.018), ['read', 'seat-work', 'sink', { intake: 0.01 }], finished]],
    ['seat work between the two cc', [before, ['tick', 'seat-work'], depth(0.018), finished]],
    ['seat work between the two cc', [before, depth(0.018), ['back', ['seat-work']], finished]],
    ['port work between the two cc', [before, ['tick', 'port'], depth(0.018), finished]],
    ['blend to the chamber between the two cc', [before, depth(0.018), ['tick', 'blend'], finished]],
    ['open the chamber between the two cc', [before, depth(0.018), ['tick', 'open-chamber'], finished]],
    ['weld between the two cc', [before, ['tick', 'weld'], depth(0.018), finished]],
    ['guides between the two cc', [before, depth(0.018), ['tick', 'guides'], finished]],
    ['a valve was changed between the two cc', [before, depth(0.018), ['valve'], finished]],
    [
      'other valves were in for the second cc',
      [before, shopValves, depth(0.018), finished, ['read', 'finished', 'valves-used', { '': 'own' }]],
    ],
    ['another plug was in for the second cc', [before, shopPlug, depth(0.018), finished, flush]],
    ['no cc was read before the cut', [depth(0.018), finished]],
    ['no cc was read before the cut', [depth(0.018), before, finished]],
    ['no cc was read after the cut', [before, finished, depth(0.018)]],
    [
      'no chamber was read both before and after',
      [['read', 'chambers', 'cc', four(64.2)], depth(0.018), ['read', 'finished', 'cc', { '2': 61 }]],
    ],
  ]

  it.each(rules)('“%s”', (why, told) => {
    expect(cutOf(...told).whyNot).toBe(why)
  })
})
