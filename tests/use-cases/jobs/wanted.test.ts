import { beforeEach, describe, expect, it } from 'vitest'
import { expected } from '@/lib/core/expected/expected'
import { settingFields, settingText } from '@/lib/core/shop/setting-fields'
import { currentSettings } from '@/lib/data/settings'
import { changeSettings } from '@/lib/use-cases/settings/change-settings'
import { auditChanges } from '@/lib/data/stored/records'
import { benchFiguresOf } from '@/lib/dossier/at-bench'
import { expectedFacts } from '@/lib/dossier/expected-facts'
import { loadDossier } from '@/lib/dossier/dossier'
import { emptyEngineFigures } from '@/lib/schemas/job'
import { changeSettingsSchema } from '@/lib/schemas/settings'
import {
  changeCastingWantedSchema,
  changeHeadWantedSchema,
  changeJobWantedSchema,
  changeShopWantedSchema,
  type WantedForm,
} from '@/lib/schemas/wanted'
import { changeCastingWanted } from '@/lib/use-cases/castings/change-casting-wanted'
import { changeHeadWanted } from '@/lib/use-cases/jobs/change-head-wanted'
import { changeJobWanted } from '@/lib/use-cases/jobs/change-job-wanted'
import { changeShopWanted } from '@/lib/use-cases/settings/change-shop-wanted'
import { seeStep } from '@/lib/use-cases/stations/see-step'
import { benchLine, benchSentence } from '@/lib/words/at-bench'
import { testDatabase, type TestDatabase } from '@/tests/setup/database'
import { at, book, casting, counter, machinist, monday, openShop, otherCounter, owner, refusalOf } from './counter-shop'

let shop: TestDatabase
let [left, right]: string[] = []
let jobId = ''

const work = [
  { work: 'seat-work', note: '' },
  { work: 'springs', note: '' },
] as const

beforeEach(async () => {
  shop = await testDatabase()
  await openShop(shop)
  await setShop({ intakeSeatWidthIn: '.055', exhaustSeatWidthIn: '.065', intakeSeatAngleDeg: '45' })
  const booked = await book({
    ordered: [...work],
    wanted: { intakeSeatWidthIn: '.060', intakeSeatPressureLbf: '130', exhaustSeatPressureLbf: '130' },
  })
  jobId = booked.jobId
  ;[left, right] = booked.heads.map(({ visitId }) => visitId)
})

const setShop = (wanted: Partial<WantedForm>, version = 0) =>
  changeShopWanted(owner, changeShopWantedSchema.parse({ version, wanted, reason: 'As we do it' }), at(monday))

const setJob = (wanted: Partial<WantedForm>, version = 1, by = counter) =>
  changeJobWanted(by, changeJobWantedSchema.parse({ jobId, version, wanted }), at(monday))

async function setHead(visitId: string, wanted: Partial<WantedForm>, version?: number, by = counter) {
  const seen = version ?? (await shop.client.visit.findUniqueOrThrow({ where: { id: visitId } })).version
  return changeHeadWanted(by, changeHeadWantedSchema.parse({ visitId, version: seen, wanted }), at(monday))
}

const setCasting = (wanted: Partial<WantedForm>) =>
  changeCastingWanted(owner, changeCastingWantedSchema.parse({ castingId: casting, version: 1, wanted }), at(monday))

const wanted = async (visitId = left ?? '') => (await loadDossier(shop.client, visitId)).wanted
const said = async (visitId = left ?? '') =>
  Object.entries(await wanted(visitId)).map(([key, { value, from }]) => `${key} ${value} ${from}`)

describe('wanted figures of a head', () => {
  it('come from the job, then the casting record, then the shop', async () => {
    expect(await said()).toEqual([
      'intakeSeatAngleDeg 45 shop',
      'intakeSeatWidthIn 0.06 job',
      'exhaustSeatWidthIn 0.065 shop',
      'intakeSeatPressureLbf 130 job',
      'exhaustSeatPressureLbf 130 job',
      'runoutMostIn 0.002 shop',
      'straightAcrossMostIn 0.002 shop',
      'straightAlongMostIn 0.004 shop',
    ])
    await setCasting({ intakeSeatWidthIn: '.058', exhaustSeatWidthIn: '.070' })
    expect(await said()).toContain('intakeSeatWidthIn 0.06 job')
    expect(await said()).toContain('exhaustSeatWidthIn 0.07 casting')
  })

  it('one head may depart from its job, the other does not follow', async () => {
    await setHead(left ?? '', { intakeSeatWidthIn: '1.5 mm' })
    const { intakeSeatWidthIn } = await wanted(left)
    expect(intakeSeatWidthIn).toMatchObject({ text: '1.5 mm', from: 'head' })
    expect(intakeSeatWidthIn?.value).toBeCloseTo(1.5 / 25.4, 12)
    expect(await said(right)).toContain('intakeSeatWidthIn 0.06 job')
  })

  it('an emptied figure is what the next place says', async () => {
    await setJob({})
    expect(await said()).toContain('intakeSeatWidthIn 0.055 shop')
  })

  it('the lift is the engine’s', async () => {
    const booked = await book({
      engine: {
        label: '',
        layout: 'v',
        camInHead: 'no',
        figures: { ...emptyEngineFigures(), intakeLiftIn: '.540' },
      },
      customer: { id: '', name: 'Elsie Vane', phone: '', email: '', address: '' },
    })
    expect(await said(booked.heads[0]?.visitId)).toContain('intakeLiftIn 0.54 job')
  })

  it('a head keeps the shop’s figures of the day it was booked', async () => {
    await setShop({ exhaustSeatWidthIn: '.090' }, 1)
    expect(await said()).toContain('exhaustSeatWidthIn 0.065 shop')
  })
})

describe('what reads them', () => {
  const step = async (stepId: 'seat-work' | 'springs') => {
    const dossier = await loadDossier(shop.client, left ?? '')
    const found = dossier.route.find((one) => one.stepId === stepId)
    if (!found) throw new Error(`no ${stepId} on the route`)
    return { dossier, found }
  }

  it('the bench, with the place each comes from, and the job sheet', async () => {
    const { dossier, found } = await step('seat-work')
    // The sink that the target still allows is asked for too, and nothing that is wanted.
    const figures = benchFiguresOf(dossier, found).filter(({ code }) => code === 'wanted')
    expect(figures.map(benchLine)).toEqual([
      { label: 'Seat angle', value: 'intake 45.0°', note: 'shop default' },
      {
        label: 'Seat width',
        value: 'intake 0.0600 in, exhaust 0.0650 in',
        note: 'intake: for this job, exhaust: shop default',
      },
      { label: 'Runout of a seat', value: 'at most 0.0020 in', note: 'shop default' },
    ])
    expect(benchSentence(figures)).toBe(
      'Wanted: seat angle intake 45.0°; seat width intake 0.0600 in, exhaust 0.0650 in; ' +
        'runout of a seat at most 0.0020 in',
    )
  })

  it('the cell on the tablet, with the tolerance', async () => {
    const { found } = await step('seat-work')
    const { fields, plan } = await seeStep(machinist, left ?? '', found, monday)
    const target = (point: string) =>
      fields.find((one) => one.kind === 'seat-width' && one.point.endsWith(point))?.target
    expect(target('intake')?.text).toBe('0.0600 in (0.0500 to 0.0700)')
    expect(target('intake')?.lowest).toBeCloseTo(0.05, 12)
    expect(target('exhaust')?.highest).toBeCloseTo(0.075, 12)
    expect(fields.find(({ kind }) => kind === 'runout')?.target?.text).toBe('at most 0.0020 in')
    expect(plan.lines.map(({ label }) => label)).toContain('Seat width')
  })

  it('what a reading is expected to be: three tolerances of 0.010 about 0.060', async () => {
    const { dossier, found } = await step('seat-work')
    const facts = await expectedFacts(shop.client, dossier, found, [], {})
    const span = expected('seat-width', 'intake', facts)
    expect(span).toMatchObject({ value: 0.06, why: { code: 'wanted' } })
    expect(span?.low).toBeCloseTo(0.03, 12)
    expect(span?.high).toBeCloseTo(0.09, 12)
  })

  it('a limit that the job asks for holds in the place of the shop’s', async () => {
    await setJob({ runoutMostIn: '.001', straightAlongMostIn: '.002', straightAcrossMostIn: '.003' })
    const { settings } = await loadDossier(shop.client, left ?? '')
    expect(settings.runoutLimitIn).toBe(0.001)
    expect(settings.straightAcrossIn).toBe(0.003)
    expect(settings.straightAlongPerCylinderIn * 4).toBeCloseTo(0.002, 12)
  })
})

describe('changing them', () => {
  it('is on record, figure by figure, as typed', async () => {
    await setJob({ intakeSeatWidthIn: '.062', exhaustOpenPressureLbf: '330' })
    await setHead(right ?? '', { runoutMostIn: '.001' })
    const changes = async (action: string) => {
      const entry = await shop.client.auditEntry.findFirstOrThrow({ where: { action }, orderBy: { seq: 'desc' } })
      return auditChanges.read(entry.changes, entry.seq)
    }
    expect(await changes('job.change-wanted')).toEqual({
      'wanted.intakeSeatWidthIn': { from: '.060 in', to: '.062 in' },
      'wanted.intakeSeatPressureLbf': { from: '130 lbf', to: '' },
      'wanted.exhaustSeatPressureLbf': { from: '130 lbf', to: '' },
      'wanted.exhaustOpenPressureLbf': { from: '', to: '330 lbf' },
    })
    expect(await changes('visit.change-wanted')).toEqual({ 'wanted.runoutMostIn': { from: '', to: '.001 in' } })
    expect(await changes('job.book')).toMatchObject({ 'wanted.intakeSeatWidthIn': '.060 in' })
  })

  it('is a conflict when somebody was first, and shows both sides', async () => {
    await setJob({ intakeSeatWidthIn: '.062' }, 1, otherCounter)
    const refusal = await refusalOf(setJob({ intakeSeatWidthIn: '.064' }))
    expect(refusal.code).toBe('conflict')
    expect(refusal.fields?.['wanted.intakeSeatWidthIn']).toContain('.062 in')
    expect(refusal.fields?.['wanted.intakeSeatWidthIn']).toContain('.064 in')
    expect(await said()).toContain('intakeSeatWidthIn 0.062 job')
    await setHead(left ?? '', { runoutMostIn: '.001' })
    expect((await refusalOf(setHead(left ?? '', { runoutMostIn: '.003' }, 1))).code).toBe('conflict')
  })

  it('to what stands there already changes nothing', async () => {
    const before = await shop.client.auditEntry.count()
    await setHead(left ?? '', {})
    expect(await shop.client.auditEntry.count()).toBe(before)
  })

  it('refuses what cannot both be right, at its field', () => {
    const typed = { intakeGuideLeastIn: '.003', intakeGuideMostIn: '.002' }
    const parsed = changeJobWantedSchema.safeParse({ jobId, version: 1, wanted: typed })
    expect(parsed.error?.issues[0]?.path).toEqual(['wanted', 'intakeGuideLeastIn'])
    const far = changeJobWantedSchema.safeParse({ jobId, version: 1, wanted: { intakeSeatAngleDeg: '450' } })
    expect(far.success).toBe(false)
  })

  it('a change of the limits keeps the shop’s wanted figures', async () => {
    const { version, values } = await currentSettings(shop.client)
    const texts = Object.fromEntries(settingFields.map((field) => [field.key, settingText(field, values[field.key])]))
    const input = { version, values: { ...texts, runoutLimitIn: '.0015' }, reason: 'Tighter' }
    await changeSettings(owner, changeSettingsSchema.parse(input), at(monday))
    const now = await currentSettings(shop.client)
    expect(now.values.runoutLimitIn).toBe(0.0015)
    expect(now.values.wanted).toEqual(values.wanted)
    expect(Object.keys(now.values.wanted)).toContain('intakeSeatWidthIn')
  })
})
