import { describe, expect, it } from 'vitest'
import { wantedAtStep } from '@/lib/core/wanted/at-step'
import {
  shopWantedKeys,
  typedWantedKeys,
  wantedFigures,
  wantedKeys,
  type WantedFigures,
} from '@/lib/core/wanted/figures'
import { wantedOf } from '@/lib/core/wanted/wanted-of'

const nothing = { head: {}, job: {}, casting: {}, shop: {} }
const inch = (text: string) => ({ value: Number(text), text, unit: 'in' })
const width = (text: string): WantedFigures => ({ intakeSeatWidthIn: inch(text) })

describe('the nearest place that says it', () => {
  it('head before job before casting before shop', () => {
    const all = { head: width('.061'), job: width('.060'), casting: width('.055'), shop: width('.050') }
    const said = (places: Partial<typeof all>) => wantedOf({ ...nothing, ...places }).intakeSeatWidthIn
    expect(said(all)).toEqual({ ...inch('.061'), from: 'head' })
    expect(said({ ...all, head: {} })).toEqual({ ...inch('.060'), from: 'job' })
    expect(said({ casting: all.casting, shop: all.shop })).toEqual({ ...inch('.055'), from: 'casting' })
    expect(said({ shop: all.shop })).toEqual({ ...inch('.050'), from: 'shop' })
    expect(said({})).toBeUndefined()
  })

  it('each figure by itself: one port from the job, the other from the casting', () => {
    const casting = { intakeSeatWidthIn: inch('.055'), exhaustSeatWidthIn: inch('.070') }
    const wanted = wantedOf({ ...nothing, job: width('.060'), casting })
    expect(wanted.intakeSeatWidthIn?.from).toBe('job')
    expect(wanted.exhaustSeatWidthIn?.from).toBe('casting')
  })

  it('0 is a figure: a valve that may not sink', () => {
    const wanted = wantedOf({
      ...nothing,
      job: { intakeRecessionIn: inch('0') },
      shop: { intakeRecessionIn: inch('.005') },
    })
    expect(wanted.intakeRecessionIn).toMatchObject({ value: 0, from: 'job' })
  })

  it('makes no range of two places: the job that says the most alone leaves the least open', () => {
    const shop = { intakeGuideLeastIn: inch('.0020'), intakeGuideMostIn: inch('.0030') }
    const wanted = wantedOf({ ...nothing, job: { intakeGuideMostIn: inch('.0015') }, shop })
    expect(wanted.intakeGuideMostIn).toMatchObject({ value: 0.0015, from: 'job' })
    expect(wanted.intakeGuideLeastIn).toBeUndefined()
    const other = wantedOf({ ...nothing, job: { exhaustGuideMostIn: inch('.0015') }, shop })
    expect(other.intakeGuideLeastIn?.from).toBe('shop')
  })
})

describe('the list', () => {
  it('has each figure of a port for both ports', () => {
    const intake = wantedKeys.filter((key) => key.startsWith('intake'))
    expect(intake.length).toBe(12)
    for (const key of intake) {
      const other = key.replace('intake', 'exhaust') as typeof key
      expect(wantedFigures[other].group).toBe(wantedFigures[key].group)
      expect(wantedFigures[other].quantity).toBe(wantedFigures[key].quantity)
      expect(wantedFigures[other].port).toBe('exhaust')
    }
  })

  it('has no two figures of one label', () => {
    expect(new Set(wantedKeys.map((key) => wantedFigures[key].label)).size).toBe(wantedKeys.length)
  })

  it('the lift is typed with the engine, and limits of the shop among its limits; no shop has one thickness', () => {
    expect(wantedKeys.filter((key) => !typedWantedKeys.some((one) => one === key))).toEqual([
      'intakeLiftIn',
      'exhaustLiftIn',
    ])
    expect(typedWantedKeys.filter((key) => !shopWantedKeys.some((one) => one === key))).toEqual([
      'runoutMostIn',
      'straightAcrossMostIn',
      'straightAlongMostIn',
      'finishedThicknessIn',
    ])
  })
})

describe('at a step', () => {
  it('the figures it works to, and no line for what nobody has said', () => {
    const wanted = wantedOf({
      ...nothing,
      job: { ...width('.060'), exhaustSeatWidthIn: inch('.080'), intakeInstalledHeightIn: inch('1.800') },
      shop: { exhaustGuideLeastIn: inch('.0015'), exhaustGuideMostIn: inch('.0025') },
    })
    const groups = (step: Parameters<typeof wantedAtStep>[0]) => wantedAtStep(step, wanted).map(({ group }) => group)
    expect(groups('seat-work')).toEqual(['seat-width'])
    expect(groups('heights')).toEqual(['installed-height'])
    expect(groups('guides')).toEqual(['guide-clearance'])
    expect(groups('inserts')).toEqual([])
    expect(groups('crack')).toEqual([])
    expect(wantedAtStep('guides', wanted)[0]?.at).toMatchObject([
      { port: 'exhaust', about: null, least: { value: 0.0015 }, most: { value: 0.0025 } },
    ])
    expect(wantedAtStep('seat-work', wanted)[0]?.at.map(({ port, about }) => [port, about?.value])).toEqual([
      ['intake', 0.06],
      ['exhaust', 0.08],
    ])
  })
})
