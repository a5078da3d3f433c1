import { beforeEach, describe, expect, test } from 'vitest'
import type { Actor } from '@/lib/core/access/roles'
import { workLabel } from '@/lib/core/route/presets'
import { noRules } from '@/lib/core/route/rules'
import { stationLabels } from '@/lib/core/route/stations'
import { stepDetail } from '@/lib/data/stored/route-step'
import { changeStepSchema, nameStationsSchema, ownStepSchema, type ApplyRules } from '@/lib/schemas/rules'
import { reportFinding } from '@/lib/use-cases/findings/report-finding'
import { seeFinding } from '@/lib/use-cases/findings/see-finding'
import { changeOrderedWork } from '@/lib/use-cases/jobs/change-ordered-work'
import { seeJob } from '@/lib/use-cases/jobs/see-job'
import { applyRules } from '@/lib/use-cases/rules/apply-rules'
import { changeRules } from '@/lib/use-cases/rules/change-rules'
import { seeRules } from '@/lib/use-cases/rules/see-rules'
import { seeRulesPreview } from '@/lib/use-cases/rules/see-rules-preview'
import { seeSettings } from '@/lib/use-cases/settings/see-settings'
import { tickStep } from '@/lib/use-cases/visits/tick-step'
import { book, head } from '../jobs/counter-shop'
import { expectRefused, notOwners, now, staffedShop, type Staffed } from '../people/staff'

const lapping = (version: number, more: Record<string, unknown> = {}) =>
  ownStepSchema.parse({
    version,
    id: '',
    label: 'Lap the deck by hand',
    station: 'deck-mill',
    cells: ['○', '○', '●', '●'],
    when: '',
    limit: '',
    after: 'deburr',
    waitsFor: ['deburr'],
    undoneBy: ['deck-cut'],
    owes: ['work-note'],
    machining: true,
    retired: false,
    reason: 'customers ask for it',
    ...more,
  })

let shop: Staffed
beforeEach(async () => {
  process.env.NEXTAUTH_SECRET = 'only for these tests, long enough'
  shop = await staffedShop()
})
const look = () => shop.database.client.settings.findMany()
const stepsOf = (visitId: string) =>
  shop.database.client.routeStep.findMany({ where: { visitId }, orderBy: { place: 'asc' } })
const bookFlat = async () => {
  const before = await shop.database.client.visit.findMany({ select: { id: true } })
  const lines = [{ work: 'flat-cut' as const, note: '' }]
  await book({ heads: [head({ castingId: '' })], ordered: lines }, { now }, shop.staff.tamsin)
  const visits = await shop.database.client.visit.findMany({ select: { id: true } })
  return visits.find(({ id }) => !before.some((known) => known.id === id))?.id ?? ''
}

test('the same steps saved again make no new version', async () => {
  const names = nameStationsSchema.parse({
    version: 0,
    names: { ...stationLabels, wash: 'Jet wash' },
    reason: 'as we say',
  })
  await changeRules(shop.staff.orla, names, { now })
  const before = await look()
  await expect(changeRules(shop.staff.orla, { ...names, version: before.length }, { now })).rejects.toMatchObject({
    refusal: { message: expect.stringContaining('Nothing changed') as string },
  })
  expect(await look()).toEqual(before)
})

describe('only the owner', () => {
  test.each(notOwners)('changes the steps: %s is refused', (who) =>
    expectRefused(shop.staff[who], (actor: Actor) => changeRules(actor, lapping(0), { now }), look),
  )
  test.each(notOwners)('sees them as settings: %s is refused', (who) =>
    expectRefused(shop.staff[who], (actor: Actor) => seeRules(actor), look),
  )
  test.each(notOwners)('sees what they would change: %s is refused', (who) =>
    expectRefused(shop.staff[who], (actor: Actor) => seeRulesPreview(actor), look),
  )
  test.each(notOwners)('lets heads follow: %s is refused', (who) =>
    expectRefused(
      shop.staff[who],
      (actor: Actor) => applyRules(actor, { version: 0, visitIds: [] } satisfies ApplyRules, { now }),
      look,
    ),
  )
})

test('a step that was added comes on the next head’s route, not on that of a head in house until it is told to', async () => {
  const inHouse = await bookFlat()
  const { version } = await changeRules(shop.staff.orla, lapping(0), { now })
  const next = await bookFlat()
  expect((await stepsOf(inHouse)).map(({ label }) => label)).not.toContain('Lap the deck by hand')
  const labels = (await stepsOf(next)).map(({ label }) => label)
  expect(labels[labels.indexOf('Deburr and chamfer') + 1]).toBe('Lap the deck by hand')

  const { heads } = await seeRulesPreview(shop.staff.orla)
  expect(heads.map(({ visitId, changes }) => [visitId, changes])).toEqual([
    [inHouse, ['Lap the deck by hand is needed: flat cut']],
  ])
  await applyRules(shop.staff.orla, { version, visitIds: [inHouse] }, { now })
  expect((await stepsOf(inHouse)).map(({ label }) => label)).toContain('Lap the deck by hand')
  expect((await seeRules(shop.staff.orla)).behind).toBe(0)
})

test('it is refused a tick until it has what it asks for, in its own words', async () => {
  await changeRules(shop.staff.orla, lapping(0, { cells: ['●', '●', '●', '●'], waitsFor: [] }), { now })
  const visitId = await bookFlat()
  const tick = tickStep(
    shop.staff.dov,
    { visitId, step: { stepId: 'own-1', occurrence: '', orderId: null }, seen: 0, entry: null },
    { now },
  )
  await expect(tick).rejects.toMatchObject({
    refusal: {
      code: 'owed',
      message: expect.stringMatching(/^Lap the deck by hand: .*check in comes first/) as string,
    },
  })
})

test('what would keep a head from its end is refused, and nothing is written', async () => {
  const round = changeStepSchema.parse({
    version: 1,
    ref: 'deburr',
    label: 'Deburr and chamfer',
    station: 'deck-mill',
    cells: ['–', '●', '●', '●'],
    waitsFor: ['own-1'],
    undoneBy: [],
    reason: 'by mistake',
  })
  await changeRules(shop.staff.orla, lapping(0), { now })
  const before = await look()
  await expect(changeRules(shop.staff.orla, round, { now })).rejects.toMatchObject({
    refusal: {
      code: 'invalid',
      message: 'These steps would wait for each other: deburr and chamfer and lap the deck by hand.',
    },
  })
  expect(await look()).toEqual(before)
})

test('two owners at once: the second sees that somebody was first', async () => {
  await changeRules(shop.staff.orla, lapping(0), { now })
  await expect(changeRules(shop.staff.orla, lapping(0, { label: 'Another' }), { now })).rejects.toMatchObject({
    refusal: { code: 'conflict' },
  })
})

test('a station’s name and every change of a step stand in the history in words; the limits stay beside them', async () => {
  const names = { ...stationLabels, 'deck-mill': 'The big mill' }
  await changeRules(shop.staff.orla, nameStationsSchema.parse({ version: 0, names, reason: 'so we say' }), {
    now,
  })
  await changeRules(shop.staff.orla, lapping(1), { now })
  await changeRules(shop.staff.orla, lapping(2, { id: 'own-1', retired: true, reason: 'nobody asks' }), {
    now,
  })
  const { current, history } = await seeSettings(shop.staff.orla)
  expect(history.map(({ changes }) => changes)).toEqual([
    ['Lap the deck by hand is no longer used on new routes'],
    ['Lap the deck by hand was added, at the big mill: no cut, clean-up: when ordered; flat cut, angle cut: always'],
    ['Deck mill is now called The big mill'],
  ])
  expect(current.values.ccToleranceCc).toBe(0.5)
  expect(current.values.rules.stationNames).toEqual({ 'deck-mill': 'The big mill' })
  // Back to the name it had: nothing of the change is kept.
  await changeRules(shop.staff.orla, nameStationsSchema.parse({ version: 3, names: stationLabels, reason: 'no' }), {
    now,
  })
  expect((await seeRules(shop.staff.orla)).rules.stationNames).toEqual(noRules.stationNames)
})

test('work of the shop’s own is ordered only where the head’s rules know it', async () => {
  const visitId = await bookFlat()
  const { jobId, version } = await shop.database.client.visit.findUniqueOrThrow({ where: { id: visitId } })
  await changeRules(shop.staff.orla, lapping(0), { now })
  const order = {
    jobId,
    visits: [{ visitId, version }],
    add: [{ work: 'own-1' as const, note: '' }],
    end: [],
    reason: 'asked',
  }
  await expect(changeOrderedWork(shop.staff.tamsin, order, { now })).rejects.toMatchObject({
    refusal: { code: 'wrong-state', message: expect.stringMatching(/do not include this work/) as string },
  })
  await applyRules(shop.staff.orla, { version: 1, visitIds: [visitId] }, { now })
  const again = { ...order, visits: [{ visitId, version: version + 1 }] }
  await changeOrderedWork(shop.staff.tamsin, again, { now })
  const lap = (await stepsOf(visitId)).find(({ stepId }) => stepId === 'own-1')
  expect(stepDetail.read(lap?.detail ?? '', '')).toMatchObject({ why: { code: 'ordered' } })
})

test('a job and a finding offer the work that the head’s own day knows, under its name of that day', async () => {
  await changeRules(shop.staff.orla, lapping(0), { now })
  const visitId = await bookFlat()
  const { job } = await shop.database.client.visit.findUniqueOrThrow({
    where: { id: visitId },
    select: { job: { select: { number: true } } },
  })
  const found = await reportFinding(shop.staff.dov, { visitId, stepId: null, what: 'Deck is wavy' }, { now })
  await changeRules(shop.staff.orla, lapping(1, { id: 'own-1', label: 'Lap by machine' }), { now })
  const names = async () => {
    const { pairs } = await seeJob(shop.staff.tamsin, { number: job.number, now })
    const finding = await seeFinding(shop.staff.tamsin, { id: found.findingId, now })
    return [...pairs.map(({ rules }) => rules), finding.rules].map((rules) => workLabel('own-1', rules))
  }
  expect(await names()).toEqual(['Lap the deck by hand', 'Lap the deck by hand'])
  await applyRules(shop.staff.orla, { version: 2, visitIds: [visitId] }, { now })
  expect(await names()).toEqual(['Lap by machine', 'Lap by machine'])
})
