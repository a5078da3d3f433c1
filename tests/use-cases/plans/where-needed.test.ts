import { expect, test } from 'vitest'
import { workedPlan } from '@/lib/core/options/plan-record-of'
import { seePlan } from '@/lib/use-cases/plans/see-plan'
import { book, head } from '../jobs/counter-shop'
import { now, staffedShop } from '../people/staff'

test('what a plan is short of leads to where it is entered', async () => {
  const shop = await staffedShop()
  await book({ heads: [head({ castingId: '' })], targetCc: '' }, { now }, shop.staff.tamsin)
  const visit = await shop.database.client.visit.findFirstOrThrow({ include: { job: true } })
  const { context, whereNeeded } = await seePlan(shop.staff.tamsin, visit.pairId)
  const typed = { flatIn: null, angleIn: null, angleDeg: null, stopAtIn: null, sinkIn: null }
  const answer = workedPlan(context, { kind: 'flat', splitBy: 'margin', ...typed })
  if (answer.ok) throw new Error('A plan without a target and without a measured chamber was worked out.')
  const needs = answer.refusal.needs ?? []
  expect(needs).toEqual(expect.arrayContaining(['targetCc', 'presentCc']))
  expect(needs.map((name) => whereNeeded[name]?.href)).toEqual(
    expect.arrayContaining([`/jobs/${visit.job.number}`, `/stations/measuring-bench/heads/${visit.id}?step=chambers`]),
  )
})
