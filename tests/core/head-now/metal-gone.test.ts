import { describe, expect, it } from 'vitest'
import { must } from '@/lib/core/errors'
import { atDeeperEnd, goneAtCornerIn, leastGoneIn, mostGoneIn } from '@/lib/core/head-now/gone'
import { metalGone, type MetalGoneInput } from '@/lib/core/head-now/metal-gone'
import { goneDiffersText } from '@/lib/words/cut-cautions'

const corners = (intake1: number, exhaust1: number, intake2: number, exhaust2: number) => ({
  'intake-1': intake1,
  'exhaust-1': exhaust1,
  'intake-2': intake2,
  'exhaust-2': exhaust2,
})
const deck = { milledWidthIn: 6, deckLengthIn: 20, inset: { edgeIn: 0, endIn: 0 } }
const input = (more: Partial<MetalGoneInput> = {}): MetalGoneInput => ({
  newThicknessIn: 4.5,
  corners: {},
  deck,
  knownCuts: [],
  removedBeforeIn: null,
  isNew: false,
  ...more,
})

describe('metal gone', () => {
  it('by the corners: 0.020 and 0.060 at the edges, 0.004 more at end 2, whatever was typed', () => {
    const { gone, by, differs } = must(
      metalGone(input({ corners: corners(4.482, 4.442, 4.478, 4.438), removedBeforeIn: 0.06 })),
    )
    expect(by).toBe('corners')
    // Gauged on a deck that leans 0.38°: 4.46·(1 − cos) = 0.1 thou.
    expect(gone.atIntakeEdgeIn).toBeCloseTo(0.02, 3)
    expect(gone.atExhaustEdgeIn).toBeCloseTo(0.06, 3)
    expect(gone.taperIn).toBeCloseTo(0.004, 4)
    expect(mostGoneIn(gone)).toBeCloseTo(0.062, 3)
    expect(leastGoneIn(gone)).toBeCloseTo(0.018, 3)
    expect(goneAtCornerIn(gone, 'exhaust-1')).toBeCloseTo(0.058, 3)
    // 0.060 differs from 0.018 at intake end 1 by 42 thou.
    expect(differs?.corner).toBe('intake-1')
    expect(differs?.bySumIn).toBe(0.06)
  })

  it('by what was typed when no corner was read, taken as flat', () => {
    expect(must(metalGone(input({ removedBeforeIn: 0.014 })))).toMatchObject({
      by: 'sum',
      takenAsFlat: true,
      gone: { atIntakeEdgeIn: 0.014, atExhaustEdgeIn: 0.014 },
      differs: null,
    })
  })

  it('known cuts count on top of it, each at its own edge', () => {
    const cut = { flatIn: 0.01, angleIn: 0.05, deepEdge: 'intake' } as const
    const { gone } = must(metalGone(input({ removedBeforeIn: 0.014, knownCuts: [cut] })))
    expect(gone.atIntakeEdgeIn).toBeCloseTo(0.074, 12)
    expect(gone.atExhaustEdgeIn).toBeCloseTo(0.024, 12)
  })

  it('a blank is unknown, not none: known cuts alone give nothing', () => {
    const cut = { flatIn: 0.01, angleIn: 0, deepEdge: 'exhaust' } as const
    expect(metalGone(input({ knownCuts: [cut] }))).toMatchObject({
      ok: false,
      refusal: { code: 'missing', needs: ['thicknessNewIn', 'removedBeforeIn'] },
    })
    expect(must(metalGone(input({ knownCuts: [cut], isNew: true }))).gone.atIntakeEdgeIn).toBe(0.01)
  })

  it('a head that was never cut has lost nothing', () => {
    expect(must(metalGone(input({ isNew: true })))).toMatchObject({ by: 'new', gone: { atExhaustEdgeIn: 0 } })
  })

  it('needs the new thickness: corners alone say nothing', () => {
    const all = corners(4.48, 4.48, 4.48, 4.48)
    expect(metalGone(input({ newThicknessIn: null, corners: all })).ok).toBe(false)
    expect(must(metalGone(input({ newThicknessIn: null, corners: all, removedBeforeIn: 0.02 }))).by).toBe('sum')
  })

  it('without the deck’s size the corners still tell the two edges apart', () => {
    const { gone } = must(
      metalGone(input({ deck: { ...deck, milledWidthIn: null }, corners: corners(4.48, 4.44, 4.48, 4.44) })),
    )
    expect(gone.atIntakeEdgeIn).toBeCloseTo(0.02, 12)
    expect(gone.atExhaustEdgeIn).toBeCloseTo(0.06, 12)
  })

  it.each([
    [0.0229, null],
    [0.0231, 'intake-1'],
  ])('typed %d, 0.020 at the corners: more than 3 thou apart is asked about', (removedBeforeIn, corner) => {
    const found = must(metalGone(input({ corners: corners(4.48, 4.48, 4.48, 4.48), removedBeforeIn })))
    expect(found.differs?.corner ?? null).toBe(corner)
  })

  it('a figure that was typed from these corners is not held against them', () => {
    // New less the thinnest corner, as the bench is told to work it out.
    const found = must(metalGone(input({ corners: corners(4.48, 4.44, 4.48, 4.44), removedBeforeIn: 0.06 })))
    expect(found.differs).toBeNull()
  })

  it('nor is one that was rounded to the thou: 0.0596 gone, 0.060 typed', () => {
    const found = must(metalGone(input({ corners: corners(4.48, 4.4404, 4.48, 4.4404), removedBeforeIn: 0.06 })))
    expect(found.differs).toBeNull()
  })

  it('at the deeper end both edges have lost half the taper more, whichever end that is', () => {
    for (const taperIn of [0.004, -0.004]) {
      const end = atDeeperEnd({ atIntakeEdgeIn: 0.02, atExhaustEdgeIn: 0.06, taperIn })
      expect(end.atIntakeEdgeIn).toBeCloseTo(0.022, 12)
      expect(end.atExhaustEdgeIn).toBeCloseTo(0.062, 12)
    }
  })

  it('says both figures and asks which is wrong', () => {
    const { differs } = must(metalGone(input({ corners: corners(4.454, 4.454, 4.454, 4.454), removedBeforeIn: 0.02 })))
    const said = differs && goneDiffersText('T-0412', differs)
    expect(said).toContain('46 thou by the thickness, 20 thou by the known cuts. Which is wrong?')
  })

  it('a head thicker than new by more than a gauge is off is a contradiction, or gives way to what was typed', () => {
    const thick = corners(4.51, 4.51, 4.51, 4.51)
    expect(metalGone(input({ corners: thick }))).toMatchObject({ ok: false, refusal: { code: 'contradiction' } })
    const typed = must(metalGone(input({ corners: thick, removedBeforeIn: 0.02 })))
    expect(typed).toMatchObject({ by: 'sum', differs: { corner: 'intake-1' } })
    expect(typed.differs?.byCornersIn).toBeCloseTo(-0.01, 12)
    expect(must(metalGone(input({ corners: corners(4.502, 4.502, 4.502, 4.502) }))).by).toBe('corners')
  })

  it('more than an inch gone is no head', () => {
    expect(metalGone(input({ corners: corners(3.4, 3.4, 3.4, 3.4) }))).toMatchObject({
      ok: false,
      refusal: { code: 'out-of-range' },
    })
  })
})
