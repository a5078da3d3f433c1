import { describe, expect, it } from 'vitest'
import { defaultExpectedLimits } from '@/lib/core/expected/limits'
import { completeness } from '@/lib/core/route/completeness'
import type { RouteFacts } from '@/lib/core/route/types'
import type { WantedKey } from '@/lib/core/wanted/figures'
import { lackText } from '@/lib/words/lacks'
import { figure } from '../wanted/any-wanted'
import { Visit, type Answer } from './visit'

const wanted = (figures: Partial<Record<WantedKey, number>>) =>
  Object.fromEntries(Object.entries(figures).map(([key, value]) => [key, figure(value)]))

const limitsWith = (
  figures: Partial<Record<WantedKey, number>>,
  liftIn: number | null = null,
): NonNullable<RouteFacts['valveLimits']> => ({
  limits: defaultExpectedLimits,
  liftIn: { intake: liftIn, exhaust: liftIn },
  wanted: wanted(figures),
})

/** What is out at one step of a head of two chambers, in words. */
function outAt(
  step: 'guides' | 'seat-work' | 'heights' | 'springs',
  valveLimits: RouteFacts['valveLimits'],
  answers: readonly Answer[],
  more: Partial<RouteFacts> = {},
) {
  const visit = Visit.of({
    chambers: 2,
    ordered: ['guides', 'seat-work', 'springs', 'assemble'],
    cameAssembled: true,
    ...more,
  })
  visit.knows(valveLimits ? { valveLimits } : {}).read(step, ...answers)
  const out = completeness(visit.facts).filter(({ what }) => what === 'tolerance')
  return { visit, out, words: out.map(({ lack }) => lackText(lack)) }
}

describe('figures of the valves that stand between a head and its release', () => {
  it('a seat outside its wanted width, by the tolerance, at either end', () => {
    // 0.060 ± 0.010: from 0.050 to 0.070. 0.06 + 0.01 is 0.0699… in binary: the end itself is inside.
    const { words, out } = outAt('seat-work', limitsWith({ intakeSeatWidthIn: 0.06 }), [
      ['seat-width', '1-intake', 0.07],
      ['seat-width', '2-intake', 0.0701],
      ['seat-width', '1-exhaust', 0.2],
      ['seat-width', '2-exhaust', 0.05],
    ])
    expect(words).toEqual(['chamber 2 intake: seat width is 0.0701 in, over the maximum of 0.0700 in'])
    expect(out[0]).toMatchObject({ step: { stepId: 'seat-work' }, label: 'Seat work' })
    expect(
      outAt('seat-work', limitsWith({ intakeSeatWidthIn: 0.06 }), [['seat-width', '1-intake', 0.0499]]).words,
    ).toEqual(['chamber 1 intake: seat width is 0.0499 in, under the minimum of 0.0500 in'])
  })

  it('runout over its limit, vacuum under its least, a guide out of its range', () => {
    expect(
      outAt('seat-work', limitsWith({}), [
        ['runout', '1-intake', 0.002],
        ['runout', '2-exhaust', 0.0021],
        ['vacuum', '1-exhaust', 17.9],
        ['vacuum', '1-intake', 18],
      ]).words,
    ).toEqual([
      'chamber 2 exhaust: runout of the seat is 0.0021 in, over the maximum of 0.0020 in',
      'chamber 1 exhaust: vacuum held is 17.9 inHg, under the minimum of 18.0 inHg',
    ])
    const guides = limitsWith({ exhaustGuideLeastIn: 0.0016, exhaustGuideMostIn: 0.0024 })
    expect(
      outAt('guides', guides, [
        ['guide-clearance', '1-exhaust', 0.0025],
        ['guide-clearance', '2-exhaust', 0.0015],
        ['guide-clearance', '1-intake', 0.009],
      ]).words,
    ).toEqual([
      'chamber 1 exhaust: guide clearance is 0.0025 in, over the maximum of 0.0024 in',
      'chamber 2 exhaust: guide clearance is 0.0015 in, under the minimum of 0.0016 in',
    ])
  })

  it('a retainer that meets the seal before full lift and the margin', () => {
    // Lift 0.550 + margin 0.050 = 0.600.
    expect(
      outAt('heights', limitsWith({}, 0.55), [
        ['retainer-to-seal', '1-intake', 0.6],
        ['retainer-to-seal', '1-exhaust', 0.599],
      ]).words,
    ).toEqual(['chamber 1 exhaust: retainer to seal, valve shut is 0.5990 in, under the minimum of 0.6000 in'])
  })

  it('an installed height counts with the shims that came after it was measured', () => {
    // Wanted 1.810 ± 0.010. Measured 1.850 without shims; 0.030 at the spring bench: 1.820, just inside.
    const limits = limitsWith({ intakeInstalledHeightIn: 1.81 })
    const { visit, words } = outAt('heights', limits, [
      ['installed-height', '1-intake', 1.85],
      ['shims', '1-intake', 0],
    ])
    expect(words).toEqual([
      'chamber 1 intake: installed height of the spring is 1.8500 in, over the maximum of 1.8200 in',
    ])
    const withShim = (shimIn: number) =>
      completeness(visit.copy().read('springs', ['shims', '1-intake', shimIn]).facts)
        .filter(({ what }) => what === 'tolerance')
        .map(({ lack }) => lackText(lack))
    expect(withShim(0.03)).toEqual([])
    // 0.060 instead: 1.790, under 1.800.
    expect(withShim(0.06)).toEqual([
      'chamber 1 intake: installed height of the spring is 1.7900 in, under the minimum of 1.8000 in',
    ])
  })

  it('one figure for all valves is named once; a valve’s own goes before it', () => {
    const limits = limitsWith({ intakeSeatPressureLbf: 130, exhaustSeatPressureLbf: 130 })
    expect(outAt('springs', limits, [['spring-pressure', 'seat', 150]]).words).toEqual([
      'on the seat: seat pressure is 150 lbf, over the maximum of 143 lbf',
    ])
    expect(
      outAt('springs', limits, [
        ['spring-pressure', 'seat', 150],
        ...['1-intake', '1-exhaust', '2-intake', '2-exhaust'].map((at): Answer => ['seat-pressure', at, 130]),
      ]).words,
    ).toEqual([])
  })

  it('is let pass by the owner for that very figure, and not for the next one', () => {
    const { visit, out } = outAt('seat-work', limitsWith({}), [['runout', '1-intake', 0.003]])
    const waivedGaps = out.map(({ gap }) => gap)
    expect(completeness(visit.facts, { waivedGaps }).filter(({ what }) => what === 'tolerance')).toEqual([])
    const again = visit.read('seat-work', ['runout', '1-intake', 0.0035]).facts
    expect(completeness(again, { waivedGaps }).filter(({ what }) => what === 'tolerance')).toHaveLength(1)
  })

  it('nothing is judged where a head has no limits, on a cut bench for one', () => {
    expect(outAt('seat-work', undefined, [['runout', '1-intake', 0.03]]).words).toEqual([])
  })
})
