import { beforeAll, describe, expect, test } from 'vitest'
import type { Actor } from '@/lib/core/access/roles'
import { queuePlace } from '@/lib/core/route/station-queue'
import type { Whereabouts } from '@/lib/core/route/types'
import { addCastingSchema } from '@/lib/schemas/casting'
import { seeBackRoom } from '@/lib/use-cases/back-room/see-back-room'
import { addDays, dayIn } from '@/lib/core/shop/calendar'
import { seeTrail } from '@/lib/use-cases/back-room/see-trail'
import { addCasting } from '@/lib/use-cases/castings/add-casting'
import { decideHold } from '@/lib/use-cases/holds/decide-hold'
import { openHold } from '@/lib/use-cases/holds/open-hold'
import { addVendor } from '@/lib/use-cases/vendors/add-vendor'
import { book, head } from '../jobs/counter-shop'
import { expectRefused, notOwners, now, staffedShop, type Staffed } from '../people/staff'

const hourMs = 60 * 60 * 1000
const after = (hours: number) => new Date(now.getTime() + hours * hourMs)

let shop: Staffed
let castingId: string
/** Two heads on the first job, a third on the second: their visits and what is on their brass. */
let visitIds: readonly string[]
let tags: readonly string[]

beforeAll(async () => {
  shop = await staffedShop()
  const casting = addCastingSchema.parse({
    name: 'Corrie 70',
    material: 'iron',
    chamberCount: '2',
    chamberShape: 'open',
    deepEdge: 'exhaust',
    note: '',
    figures: { any: {}, 'as-cast': {}, machined: {}, opened: {} },
    bolts: [],
    variants: [],
  })
  castingId = (await addCasting(shop.staff.orla, casting, { now })).castingId
  const { tamsin } = shop.staff
  await book({ heads: [head({ castingId }), head({ castingId })], targetCc: '64' }, { now: after(1) }, tamsin)
  await book({ heads: [head({ castingId })], targetCc: '64' }, { now: after(2) }, tamsin)
  const assigned = await shop.database.client.tagAssignment.findMany({
    orderBy: { sortNumber: 'asc' },
    select: { number: true, head: { select: { visits: { select: { id: true } } } } },
  })
  tags = assigned.map(({ number }) => number)
  visitIds = assigned.flatMap(({ head: { visits } }) => visits.map(({ id }) => id))
})

const trail = async (find: string, before: number | null = null) => seeTrail(shop.staff.orla, { find, before })

describe('only the owner', () => {
  test.each(notOwners)('sees the back room: %s is refused', (who) =>
    expectRefused(
      shop.staff[who],
      (actor: Actor) => seeBackRoom(actor, now),
      async () => null,
    ),
  )
  test.each(notOwners)('sees the trail: %s is refused', (who) =>
    expectRefused(
      shop.staff[who],
      (actor: Actor) => seeTrail(actor, { find: '', before: null }),
      async () => null,
    ),
  )
})

describe('the trail', () => {
  test('is newest first', async () => {
    const { lines } = await trail('')
    const numbers = lines.map(({ seq }) => seq)
    expect(numbers).toEqual(numbers.toSorted((a, b) => b - a))
    expect(lines.length).toBeGreaterThan(5)
  })

  test('finds by a person, as who acted and as who was changed', async () => {
    const { lines } = await trail('tamsin')
    expect(lines.some(({ by }) => by === 'Tamsin Ferrabee')).toBe(true)
    expect(lines.some(({ name, by }) => name === 'Tamsin Ferrabee' && by === 'Orla Quennell')).toBe(true)
    expect(lines.every(({ by, name }) => [by, name].includes('Tamsin Ferrabee'))).toBe(true)
  })

  test('finds by a job’s number', async () => {
    const { number } = await shop.database.client.job.findFirstOrThrow({ orderBy: { number: 'asc' } })
    const { lines } = await trail(number)
    expect(lines.length).toBeGreaterThan(0)
    expect(new Set(lines.map(({ jobNumber }) => jobNumber))).toEqual(new Set([number]))
  })

  test('finds by a tag', async () => {
    const visitId = visitIds[2]!
    await openHold(shop.staff.dov, { visitId, stepId: null, reason: 'bent stud' }, { now: after(3) })
    const { lines } = await trail(tags[2]!.toLowerCase())
    expect(lines[0]).toMatchObject({
      tag: tags[2],
      by: 'Dov Marrick',
      sentence: 'Put the head on hold: bent stud',
    })
    expect((await trail(String(Number(tags[2]!.slice(2))))).lines[0]).toMatchObject({ tag: tags[2] })
    expect((await trail(tags[0]!)).lines.some(({ tag }) => tag === tags[2])).toBe(false)
  })

  test('finds by part of what was done, and by the name of a casting', async () => {
    const added = (await trail('added person')).lines.map(({ sentence }) => sentence)
    expect(added).toContain('Added person Tamsin Ferrabee')
    expect(added.every((sentence) => sentence.startsWith('Added person'))).toBe(true)
    expect((await trail('corrie')).lines.map(({ name }) => name)).toContain('Corrie 70')
  })

  test('says what was kept in words, without bare ids', async () => {
    const [added] = (await trail('added casting')).lines.filter(({ sentence }) => sentence.includes('Corrie'))
    expect(added?.sentence).toBe('Added casting Corrie 70')
    expect(added?.changes).toEqual(expect.arrayContaining(['chamber count: 2', 'material: iron']))
    const [booked] = (await trail('visit book')).lines
    expect(booked?.changes.length).toBeGreaterThan(0)
    expect(booked?.changes.join()).not.toMatch(/[0-9a-f]{8}-/)
  })

  test('keeps to one person and to days of the shop’s calendar', async () => {
    const all = (await trail('')).lines
    const day = dayIn((await trail('')).zone, now)
    const see = (more: object) => seeTrail(shop.staff.orla, { find: '', before: null, ...more })
    const { personId } = shop.staff.tamsin
    const byTamsin = (await see({ personId })).lines
    expect(byTamsin.map(({ seq }) => seq)).toEqual(
      all.filter(({ by }) => by === 'Tamsin Ferrabee').map(({ seq }) => seq),
    )
    expect((await see({ from: day, to: addDays(day, 1) })).lines).toEqual(all)
    expect((await see({ to: addDays(day, -1) })).lines).toEqual([])
    expect((await see({ from: addDays(day, 2) })).lines).toEqual([])
  })

  test('says nothing for a word that is nowhere', async () => {
    expect(await trail('zzz')).toMatchObject({ lines: [], next: null })
  })

  test('turns pages without a gap or a repetition', async () => {
    const vendor = { phone: '', email: '' as const, address: '', services: '', boxHeads: null }
    for (let count = 1; count <= 120; count++) {
      await addVendor(shop.staff.orla, { ...vendor, name: `Yard ${count}` }, { now: after(4) })
    }
    const names: string[] = []
    let before: number | null = null
    let pages = 0
    do {
      const page: Awaited<ReturnType<typeof seeTrail>> = await trail('vendor.add', before)
      names.push(...page.lines.map(({ name }) => name))
      before = page.next
      pages++
    } while (before !== null)
    expect(pages).toBe(3)
    expect(names).toEqual(Array.from({ length: 120 }, (_, at) => `Yard ${120 - at}`))
  })
})

describe('what is held', () => {
  test('stands with who and why until the owner decides', async () => {
    const visitId = visitIds[0]!
    await openHold(shop.staff.ines, { visitId, stepId: null, reason: 'chamber 2 cracked' }, { now: after(5) })
    const held = async () => (await seeBackRoom(shop.staff.orla, after(6))).holds.filter(({ tag }) => tag === tags[0])
    expect(await held()).toMatchObject([{ reason: 'chamber 2 cracked', by: 'Ines Kestrow', openedAt: after(5) }])
    const hold = await shop.database.client.hold.findFirstOrThrow({ where: { visitId } })
    const decision = {
      holdId: hold.id,
      version: 1,
      decision: 'rework' as const,
      note: 'weld',
      customerYes: '',
    }
    await decideHold(shop.staff.orla, decision, { now: after(6) })
    expect(await held()).toEqual([])
  })
})

describe('this month', () => {
  const waiver = async (id: string, at: Date) =>
    shop.database.client.waiver.create({
      data: {
        id,
        visitId: visitIds[1]!,
        stepId: 'final',
        occurrence: '',
        orderId: null,
        gap: 'step:final',
        what: 'Final inspection is not done',
        reason: id,
        touchesCustomer: false,
        at,
        byId: shop.staff.orla.personId,
      },
    })

  test('waivers of the shop’s own calendar month', async () => {
    // Chicago keeps UTC−6 until 8 March 2026: its March begins at 06:00 UTC on the 1st.
    await waiver('the last of February', new Date('2026-03-01T05:59:00Z'))
    await waiver('the first of March', new Date('2026-03-01T06:00:00Z'))
    const { waivers } = await seeBackRoom(shop.staff.orla, new Date('2026-03-31T12:00:00Z'))
    expect(waivers.map(({ reason, tag, by }) => [reason, tag, by])).toEqual([
      ['the first of March', tags[1], 'Orla Quennell'],
    ])
  })

  test('finished chambers that missed the target, by the answer that stands', async () => {
    const visitId = visitIds[1]!
    const set = async (id: string, eventSeq: number, points: readonly object[]) =>
      shop.database.client.readingSet.create({
        data: {
          id,
          visitId,
          stepId: 'finished',
          occurrence: '',
          eventSeq,
          conditions: '{}',
          takenAt: after(8),
          recordedAt: after(8),
          byId: shop.staff.dov.personId,
          points: {
            create: points.map((point) => ({
              id: '',
              kind: 'cc',
              point: '',
              text: '',
              unit: 'cc',
              reason: '',
              ...point,
            })),
          },
        },
      })
    // Target 64, tolerance 0.5: 64.5 is on the edge and in, 64.6 is out; 65.0 was a slip, put right to 64.1.
    await set('first', 900_001, [
      { id: 'r1', point: '1', value: 64.5, text: '64.5' },
      { id: 'r2', point: '2', value: 65, text: '65.0' },
      { id: 'r3', point: '3', value: 64.6, text: '64.6' },
    ])
    await set('put right', 900_002, [
      {
        id: 'r4',
        point: '2',
        value: 64.1,
        text: '64.1',
        correctsId: 'r2',
        correction: 'replace',
        reason: 'slip',
      },
    ])
    const { outOfTolerance } = await seeBackRoom(shop.staff.orla, after(9))
    expect(outOfTolerance).toMatchObject([{ tag: tags[1], chamber: '3', text: '64.6', targetText: '64' }])
  })
})

describe('what waits where', () => {
  test('counts what could be done now, as the queue of the station does, and names the head untouched for longest', async () => {
    const { client } = shop.database
    const step = (visitId: string, state: 'ready' | 'started', where: Whereabouts) => ({
      visitId,
      stepId: 'crack',
      occurrence: 'test',
      orderKey: '',
      place: 99,
      label: 'Crack check',
      station: 'intake-mill',
      state,
      queue: queuePlace({ state, waitsFor: [] }, where),
      detail: JSON.stringify({ waitsFor: [] }),
    })
    const [first, second, third] = visitIds as readonly [string, string, string]
    await client.visitPlace.updateMany({ data: { whereabouts: 'in house' } })
    await client.visitPlace.updateMany({ where: { visitId: third }, data: { whereabouts: 'expected' } })
    const event = (visitId: string, at: Date) => ({
      visitId,
      kind: 'start',
      occurrence: '',
      note: '',
      at,
      byId: shop.staff.dov.personId,
      settingsVersion: 0,
    })
    await client.visitEvent.createMany({ data: [event(first, after(20)), event(second, after(10))] })
    await client.routeStep.createMany({
      data: [step(first, 'started', 'in house'), step(second, 'ready', 'in house'), step(third, 'ready', 'expected')],
    })
    const load = async () =>
      (await seeBackRoom(shop.staff.orla, after(30))).loads.find(({ station }) => station === 'intake-mill')
    expect(await load()).toMatchObject({
      ready: 2,
      started: 1,
      longest: { tag: tags[1], label: 'Crack check', since: after(10) },
    })
    // Undone by later work, but waiting for another step first: nobody could do it now.
    await client.routeStep.updateMany({
      where: { visitId: second, occurrence: 'test' },
      data: {
        state: 'do again',
        queue: queuePlace({ state: 'do again', waitsFor: [{ code: 'parts', what: 'valves' }] }, 'in house'),
      },
    })
    expect(await load()).toMatchObject({ ready: 1, started: 1, longest: { tag: tags[0] } })
  })
})
