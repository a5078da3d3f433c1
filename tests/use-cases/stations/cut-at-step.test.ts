import { beforeAll, describe, expect, it, vi } from 'vitest'
import type { StepId } from '@/lib/core/route/step-ids'
import { seeStep } from '@/lib/use-cases/stations/see-step'
import { chooseMarks } from '@/lib/use-cases/outside/choose-marks'
import { testDatabase } from '@/tests/setup/database'
import { at, machinist, monday, refusalOf } from '../jobs/counter-shop'
import { angledHead, outAndBack, readAngled } from '../release/angled-head'
import { workThrough } from '../release/whole-job'

vi.setConfig({ testTimeout: 120_000, hookTimeout: 240_000 })

const planAt = async (visitId: string, stepId: StepId, orderId: string | null = null) =>
  (await seeStep(machinist, visitId, { stepId, occurrence: '', orderId }, monday)).plan

describe('a vendor’s angle cut, measured', () => {
  let visitId: string
  let orderId: string
  beforeAll(async () => {
    visitId = await angledHead(await testDatabase())
    orderId = await outAndBack(visitId, '63 angle EX', '')
  })

  it('is not judged before it has been measured', async () => {
    expect((await planAt(visitId, 'arrival-figures', orderId)).cut).toBeNull()
  })

  it('stands beside the order and the marks, and says in words what is out', async () => {
    await workThrough(visitId, ['flat-cut'], readAngled)
    const { cut } = await planAt(visitId, 'arrival-figures', orderId)
    expect(
      cut?.rows.map(({ part, wanted, marked, measured, differences }) => [
        part,
        wanted,
        marked,
        measured,
        ...differences.map((one) => one.words),
      ]),
    ).toEqual([
      ['Flat part', '0 thou', '', '0 thou', 'none, within'],
      [
        'Angle part, exhaust edge',
        '63 thou',
        '63 thou',
        '66 thou',
        '3 thou too deep, out of tolerance',
        'mark: 3 thou too deep, out of tolerance',
      ],
      ['Degrees', '0.52°', '', '0.54°', '0.02° more, out of tolerance'],
      ['Taper, end 1 to end 2', '', '', '0 thou', 'none, within'],
      ['Corners out of flat', '', '', '0 thou', 'none, within'],
    ])
    expect(cut?.out).toBe('Out of tolerance: angle part, exhaust edge; degrees.')
  })

  it('the mill goes by what was measured, not by what was ordered', async () => {
    const { pass } = await planAt(visitId, 'flat-cut')
    // Chamber 1 lost 64.2 − 57.2 = 7.0 cc, so the mean of 64.0 is 57.0; 66·0.635 = 41.9 thou at six are 6.98 cc: 57.0.
    expect(pass?.figures[0]).toEqual({ label: 'Now', value: '57.0 cc', note: 'measured since the cut' })
    expect(pass?.rate).toContain('1 cut of the shop’s own behind it')
  })

  it('in the end it is the whole cut against the plan', async () => {
    await workThrough(visitId, ['final'], readAngled)
    const { cut } = await planAt(visitId, 'finished')
    expect(cut?.hasMarks).toBe(false)
    expect(cut?.rows.slice(0, 2).map(({ wanted, measured }) => [wanted, measured])).toEqual([
      ['20 thou', '20 thou'],
      ['63 thou', '66 thou'],
    ])
  })
})

describe('marks that say something else', () => {
  it('marks nobody can read are shown as they stand; the wrong edge is said', async () => {
    const visitId = await angledHead(await testDatabase())
    const odd = await outAndBack(visitId, 'B7 63', '')
    await workThrough(visitId, ['flat-cut'], readAngled)
    expect((await planAt(visitId, 'arrival-figures', odd)).cut).toMatchObject({
      hasMarks: false,
      marksAsTyped: 'B7 63',
    })
    const other = await angledHead(await testDatabase())
    const wrong = await outAndBack(other, '63 IN', '63 thou at the intake edge')
    await workThrough(other, ['flat-cut'], readAngled)
    expect((await planAt(other, 'arrival-figures', wrong)).cut?.out).toContain(
      'The marks say the intake edge. The plan says the exhaust edge.',
    )
  })
})

describe('marks that can be read in two ways', () => {
  it('stand there both ways, with the corners’ own answer; neither is taken', async () => {
    const visitId = await angledHead(await testDatabase())
    const orderId = await outAndBack(visitId, '66 EX', '')
    await workThrough(visitId, ['flat-cut'], readAngled)
    const { cut } = await planAt(visitId, 'arrival-figures', orderId)
    expect(cut).toMatchObject({ hasMarks: false, marksAsTyped: '', marksTwoWays: { typed: '66 EX' } })
    expect(cut?.marksTwoWays?.ways).toHaveLength(2)
    expect(cut?.marksTwoWays?.ways[0]?.words).toMatch(/^66 thou angle part: the corners agree, off by /)
    expect(cut?.marksTwoWays?.ways[1]?.words).toMatch(
      /^66 thou in all at the exhaust edge: the corners (do not )?agree, off by /,
    )
    expect(cut?.marksTwoWays?.corners).toMatch(/thou flat, 66(\.\d)? thou angle part$/)
    const chosen = { orderId, visitId, typed: '66 EX', way: 0 }
    expect((await refusalOf(chooseMarks(machinist, { ...chosen, typed: '63 EX' }, at(monday)))).code).toBe('conflict')
    await chooseMarks(machinist, chosen, at(monday))
    const after = (await planAt(visitId, 'arrival-figures', orderId)).cut
    // What stands on the head stays; it is read as the angle part, and can be chosen otherwise.
    expect(after).toMatchObject({ hasMarks: true, marksTwoWays: { typed: '66 EX' } })
    expect(after?.marksTwoWays?.ways.map(({ isMeant }) => isMeant)).toEqual([true, false])
    expect(after?.rows.find(({ id }) => id === 'angle')?.marked).toBe('66 thou')
    await chooseMarks(machinist, { ...chosen, way: 1 }, at(monday))
    const other = (await planAt(visitId, 'arrival-figures', orderId)).cut
    expect(other?.marksTwoWays?.ways.map(({ isMeant }) => isMeant)).toEqual([false, true])
    expect(other?.rows.find(({ id }) => id === 'angle')?.marked).toBe('')
  })
})

describe('an angle cut in house', () => {
  it('is judged by the depth at both edges', async () => {
    const visitId = await angledHead(await testDatabase())
    await workThrough(visitId, ['flat-cut'], readAngled)
    const { cut } = await planAt(visitId, 'angle-cut')
    expect(cut?.title).toBe('The cut, as read at the machine')
    expect(cut?.rows.map(({ part, wanted, measured }) => [part, wanted, measured])).toEqual([
      ['Flat part', '0 thou', '0 thou'],
      ['Angle part, exhaust edge', '63 thou', '63.5 thou'],
      ['Degrees', '0.52°', '0.52°'],
    ])
    expect(cut?.out).toBe('')
  })
})
