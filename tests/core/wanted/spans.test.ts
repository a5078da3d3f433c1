import { describe, expect, it } from 'vitest'
import { defaultExpectedLimits } from '@/lib/core/expected/limits'
import { wantedFaults } from '@/lib/core/wanted/faults'
import { groupOfReading, wantedOfReading } from '@/lib/core/wanted/of-reading'
import { believed, ofEitherPort, wantedSpan } from '@/lib/core/wanted/spans'
import { toleranceOf } from '@/lib/core/wanted/tolerances'
import { figure } from './any-wanted'

/** Round figures, so that the ends can be written down by hand. */
const shop = {
  ...defaultExpectedLimits,
  seatWidthToleranceIn: 0.01,
  guideClearanceToleranceIn: 0.0002,
  insertPressToleranceIn: 0.001,
  recessionToleranceIn: 0.004,
  stemHeightToleranceIn: 0.012,
  installedHeightToleranceIn: 0.015,
  coilBindToleranceIn: 0.02,
  springPressureTolerancePart: 0.1,
}

const ends = (span: { value: number | null; low: number | null; high: number | null } | null) =>
  span && [span.value, span.low, span.high].map((end) => end && Number(end.toFixed(9)))

describe('what is in tolerance', () => {
  it('about a figure: the shop’s tolerance either way', () => {
    const wanted = { intakeSeatWidthIn: figure(0.06), exhaustSeatPressureLbf: figure(130) }
    expect(ends(wantedSpan('seat-width', 'intake', wanted, shop))).toEqual([0.06, 0.05, 0.07])
    expect(ends(wantedSpan('seat-pressure', 'exhaust', wanted, shop))).toEqual([130, 117, 143])
    expect(wantedSpan('seat-width', 'exhaust', wanted, shop)).toBeNull()
  })

  it('each group by its own tolerance', () => {
    expect(toleranceOf('insert-press', 0.005, shop)).toBe(0.001)
    expect(toleranceOf('guide-clearance', 0.002, shop)).toBe(0.0002)
    expect(toleranceOf('recession', 0, shop)).toBe(0.004)
    expect(toleranceOf('stem-height', 2, shop)).toBe(0.012)
    expect(toleranceOf('installed-height', 1.8, shop)).toBe(0.015)
    expect(toleranceOf('coil-bind', 1.1, shop)).toBe(0.02)
    expect(toleranceOf('open-pressure', 300, shop)).toBe(30)
    expect(toleranceOf('seat-angle', 45, shop)).toBeNull()
  })

  it('of a range: least to most, the middle as the figure', () => {
    const wanted = { intakeGuideLeastIn: figure(0.001), intakeGuideMostIn: figure(0.002) }
    const span = wantedSpan('guide-clearance', 'intake', wanted, shop)
    expect(ends(span)).toEqual([0.0015, 0.001, 0.002])
    expect(span?.room).toBeCloseTo(0.0005, 12) // half of it, more than the tolerance
    const narrow = { intakeGuideLeastIn: figure(0.0015), intakeGuideMostIn: figure(0.0016) }
    expect(wantedSpan('guide-clearance', 'intake', narrow, shop)?.room).toBeCloseTo(0.0002, 12)
  })

  it('of a limit: up to it', () => {
    const wanted = { runoutMostIn: figure(0.002), straightAlongMostIn: figure(0.004) }
    expect(ends(wantedSpan('runout', null, wanted, shop))).toEqual([null, null, 0.002])
    expect(ends(wantedOfReading('straightness', 'along', wanted, shop))).toEqual([null, null, 0.004])
    expect(wantedOfReading('straightness', 'across', wanted, shop)).toBeNull()
  })

  it('a reading is held to its own port; one that names no port to both', () => {
    const wanted = {
      intakeSeatWidthIn: figure(0.06),
      exhaustSeatWidthIn: figure(0.08),
      intakeSeatPressureLbf: figure(130),
      exhaustSeatPressureLbf: figure(150),
    }
    expect(ends(wantedOfReading('seat-width', '3-exhaust', wanted, shop))).toEqual([0.08, 0.07, 0.09])
    expect(ends(wantedOfReading('seat-width', 'intake', wanted, shop))).toEqual([0.06, 0.05, 0.07])
    // 130 less 10 % to 150 and 10 %.
    expect(ends(wantedOfReading('spring-pressure', 'seat', wanted, shop))).toEqual([140, 117, 165])
    expect(wantedOfReading('spring-pressure', 'open', wanted, shop)).toBeNull()
    expect(wantedOfReading('crack', '', wanted, shop)).toBeNull()
  })

  it.each([
    ['guide-clearance', 'guide-clearance'],
    ['insert-press', 'insert-press'],
    ['seat-width', 'seat-width'],
    ['runout', 'runout'],
    ['sink', 'recession'],
    ['stem-height', 'stem-height'],
    ['installed-height', 'installed-height'],
    ['coil-bind', 'coil-bind'],
    ['seat-pressure', 'seat-pressure'],
    ['open-pressure', 'open-pressure'],
    ['straightness', 'straightness'],
    ['vacuum', null],
  ] as const)('%s answers to %s', (kind, group) => {
    expect(groupOfReading(kind, '1-intake')).toBe(group)
  })

  it('one port alone speaks for both', () => {
    const span = { value: 1, low: 0.9, high: 1.1, room: 0.1 }
    expect(ofEitherPort({ intake: null, exhaust: span })).toEqual(span)
    expect(ofEitherPort({ intake: span, exhaust: null })).toEqual(span)
    expect(ofEitherPort({ intake: null, exhaust: null })).toBeNull()
  })
})

describe('what is believed at once', () => {
  it('three tolerances from the figure; three limits', () => {
    const wanted = { intakeSeatWidthIn: figure(0.06), runoutMostIn: figure(0.002) }
    const about = wantedSpan('seat-width', 'intake', wanted, shop)
    expect(about && ends(believed(about, 3))).toEqual([0.06, 0.03, 0.09])
    const limit = wantedSpan('runout', null, wanted, shop)
    expect(limit && ends(believed(limit, 3))).toEqual([null, null, 0.006])
  })

  it('says nothing of a range without an upper end', () => {
    const least = wantedSpan('guide-clearance', 'intake', { intakeGuideLeastIn: figure(0.001) }, shop)
    expect(least).toMatchObject({ value: null, low: 0.001, high: null })
    expect(least && believed(least, 3)).toBeNull()
  })
})

describe('wanted figures that contradict each other', () => {
  const codes = (wanted: Parameters<typeof wantedFaults>[0]) => wantedFaults(wanted).map(({ code, key }) => [code, key])

  it('least over most, open under seat', () => {
    expect(codes({ exhaustGuideLeastIn: figure(0.003), exhaustGuideMostIn: figure(0.002) })).toEqual([
      ['least-over-most', 'exhaustGuideLeastIn'],
    ])
    expect(codes({ intakeSeatPressureLbf: figure(300), intakeOpenPressureLbf: figure(130) })).toEqual([
      ['open-under-seat', 'intakeSeatPressureLbf'],
    ])
    expect(codes({ exhaustGuideLeastIn: figure(0.002), exhaustGuideMostIn: figure(0.002) })).toEqual([])
  })

  it('a spring that is solid as it is fitted, or before full lift', () => {
    const spring = (height: number, bind: number, lift: number) => ({
      intakeInstalledHeightIn: figure(height),
      intakeCoilBindIn: figure(bind),
      intakeLiftIn: figure(lift),
    })
    expect(codes(spring(1.8, 1.8, 0.1))).toEqual([['bind-over-height', 'intakeCoilBindIn']])
    // 1.800 − 1.250 = 0.550: a lift of 0.550 just fits, 0.560 does not.
    expect(codes(spring(1.8, 1.25, 0.55))).toEqual([])
    expect(wantedFaults(spring(1.8, 1.25, 0.56))).toMatchObject([
      { code: 'bind-before-lift', key: 'intakeLiftIn', value: 0.56, other: expect.closeTo(0.55, 9) as number },
    ])
  })

  it('ports do not speak for each other', () => {
    expect(codes({ intakeGuideLeastIn: figure(0.003), exhaustGuideMostIn: figure(0.002) })).toEqual([])
  })
})
