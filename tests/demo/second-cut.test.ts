import { beforeAll, describe, expect, it } from 'vitest'
import { mostGoneIn } from '@/lib/core/head-now/gone'
import { workedPlan } from '@/lib/core/options/plan-record-of'
import { consequenceLines } from '@/lib/core/options/consequence-lines'
import { planLines } from '@/lib/core/options/plan-words'
import { must } from '@/lib/core/errors'
import { driveThrough, oneHand } from '@/lib/demo/drive/drive'
import { demoStaff } from '@/lib/demo/shop'
import { loadDossier, type Dossier } from '@/lib/dossier/dossier'
import { headsOfPair, planContext } from '@/lib/dossier/plan-context'
import { removedWords } from '@/lib/dossier/spec/spec-cuts'
import { planNotes } from '@/lib/use-cases/papers/plan-figures'
import { planAtStep } from '@/lib/use-cases/stations/plan-at-step'
import { seeHead } from '@/lib/use-cases/heads/see-head'
import type { TestDatabase } from '@/tests/setup/database'
import { demoMoment as now, filledDemo } from '@/tests/setup/demo-shop'

/**
 * Somebody took 12 thou off the intake edge and 48 off the exhaust edge of this 6 in wide head, which was 4.250 in thick.
 * Touched half an inch inside, the corners read 4.2350 and 4.2050 on the mean: 15 and 45 thou gone there, 6 thou an inch,
 * so that the deck leans atan(0.006) = 0.344°. The exhaust seat that was read, chamber 1, is 0.107 to its top-cut circle.
 */
const lean = Math.atan(0.03 / 5)
const rad = (deg: number) => (deg * Math.PI) / 180
/** Named circle 1.660, sealing circle 1.590, 20 thou up the valve's axis from it; the record's valve stands at 22°. */
const exhaustBefore = (() => {
  const angle = rad(22) - lean
  return 0.107 + (1.66 / 2) * Math.sin(angle) + 0.02 * Math.cos(angle) - (1.59 / 2) * Math.sin(angle)
})()

let shop: TestDatabase
let visitId = ''
let head: Dossier
beforeAll(async () => {
  shop = await filledDemo()
  const visit = await shop.client.visit.findFirstOrThrow({
    where: { job: { customer: { contact: { name: 'Perrin Oakhollow' } } } },
  })
  visitId = visit.id
  head = await loadDossier(shop.client, visitId)
}, 300_000)

describe('a head on its second cut', () => {
  it('has lost what its corners say, at each edge its own', () => {
    const { gone, by, differs } = must(head.metalGone)
    expect(by).toBe('corners')
    expect(gone.atIntakeEdgeIn).toBeCloseTo(0.012, 3)
    expect(gone.atExhaustEdgeIn).toBeCloseTo(0.048, 3)
    // 0.045 was typed from the thinnest corner: it is not held against the corners it came from.
    expect(differs).toBeNull()
  })

  it('plan page, kept plan, job sheet, tablet and head page say one margin, from the seats read on this head', async () => {
    const { plan } = head
    if (!plan) throw new Error('No plan was made.')
    const leftIn = exhaustBefore - plan.flatIn
    const said = `${(leftIn * 1000).toFixed(1)} thou`
    const exhaust = plan.seats?.find(({ port }) => port === 'exhaust')
    expect(exhaust?.marginIn).toBeCloseTo(leftIn, 5)
    expect(exhaust?.ground).toEqual({ by: 'read', valve: '1-exhaust' })

    const context = await planContext(shop.client, await headsOfPair(shop.client, head.visit.pairId))
    const worked = must(
      workedPlan(context, {
        kind: 'flat',
        splitBy: 'margin',
        flatIn: null,
        angleIn: null,
        angleDeg: null,
        stopAtIn: null,
        sinkIn: null,
      }),
    )
    const screen = consequenceLines({
      cut: { ...worked.record, milledWidthIn: context.casting.milledWidthIn },
      deepEdge: context.deepEdge,
      follows: worked.follows,
      ptvLeastIn: context.ptvLeastIn,
      sealingMarginIn: context.sealingMarginIn,
    }).flatMap(({ lines }) => lines)
    const onScreen = screen.find(({ label }) => label === 'Exhaust seat to the deck')
    expect(onScreen?.value).toBe(said)
    expect(onScreen?.note).toContain('read on this head, chamber 1 exhaust; 3 not read, taken like it')

    const notes = planNotes(head).join('\n')
    expect(notes).toContain(
      `Exhaust seat to the new deck: ${said}; ${head.label}, read on this head, chamber 1 exhaust`,
    )
    expect(notes).toMatch(/Removed before this: 0\.01\d+ in at the intake edge, 0\.04\d+ in at the exhaust edge/)

    const step = head.route.find(({ stepId }) => stepId === 'flat-cut')
    if (!step) throw new Error('No flat cut on its route.')
    const tablet = await planAtStep(shop.client, head, step, [])
    const removed = tablet.lines.find(({ label }) => label === 'Removed since new, before this')
    expect(removed).toMatchObject({ note: 'by the thickness at the corners' })
    expect(removed?.value).toMatch(/^0\.01\d+ in at the intake edge/)

    const { orla } = await demoStaff()
    const seen = await seeHead(orla, head.visit.headId)
    const [visit] = seen.visits
    const lines = visit?.plan ? planLines(visit.plan.record, visit.removedBefore) : []
    expect(lines.find(({ label }) => label === 'Exhaust seat to the new deck')?.value).toBe(said)
    const after = lines.find(({ label }) => label === 'Removed since new, after this')?.value ?? ''
    expect(Number.parseFloat(after)).toBeCloseTo(0.048 + plan.flatIn, 3)
  })

  it('by the record as if it were new the same seat would stand some 30 thou farther off: that is not what is said', () => {
    const asNew = 0.14 + (0.83 - 0.795) * Math.sin(rad(22)) + 0.02 * Math.cos(rad(22))
    expect(asNew - exhaustBefore).toBeGreaterThan(0.03)
    const margin = head.plan?.seats?.find(({ port }) => port === 'exhaust')?.marginIn ?? NaN
    expect(asNew - (head.plan?.flatIn ?? NaN) - margin).toBeGreaterThan(0.03)
  })

  it('cut and finished, the spec sheet counts both cuts at the deepest', async () => {
    const { orla } = await demoStaff()
    await driveThrough(oneHand(orla, now), visitId, 'finished')
    const done = await loadDossier(shop.client, visitId)
    const total = Number.parseFloat(removedWords(done))
    expect(removedWords(done)).toContain('at the deepest, over all visits')
    expect(Math.abs(total - (0.048 + (head.plan?.flatIn ?? NaN)))).toBeLessThan(0.0015)
    expect(done.facts.plan?.totalRemovedIn).toBeCloseTo(
      mostGoneIn(must(done.metalGone).gone) + (head.plan?.flatIn ?? NaN),
      9,
    )
  })
})
