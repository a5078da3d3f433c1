import { describe, expect, it } from 'vitest'
import { completeness, inShort, completenessWarnings } from '@/lib/core/route/completeness'
import { flat, Visit, type Answer } from './visit'
import { releaseWarningText } from '@/lib/words/ticks'
import { lackText } from '@/lib/words/lacks'

/** A flat job, done to the last inspection, with these finished cc. */
const done = (...finishedCc: number[]): Visit => {
  const visit = Visit.of({ targetCc: 60, plan: flat(0.018) })
  for (const step of [
    'check-in',
    'thickness',
    'chambers',
    'seat-before',
    'flat-cut',
    'deburr',
    'rinse',
    'seat-after',
  ] as const) {
    visit.does(step)
  }
  visit.does('finished', ...finishedCc.map((value, place): Answer => ['cc', String(place + 1), value]))
  return visit.finishes()
}

describe('what stands between a visit and its release', () => {
  it('is nothing when all is done and in tolerance; hand over comes after', () => {
    const visit = done(60, 60.5, 59.5, 60.1)
    expect(visit.missing).toEqual([])
    expect(visit.state('hand-over')).toBe('to do')
  })

  it('is each step and each reading in words, in working order', () => {
    const visit = Visit.of({ targetCc: 60, plan: flat(0.018), chambers: 2 }).does('check-in')
    visit.read('chambers', ['cc', '1', 63], ['valves-used', '', 'own'], ['plug-used', '', 'shop'])
    expect(visit.missing.slice(0, 2)).toEqual([
      'Measure thickness: not done',
      'Measure thickness: intake end 1 has no thickness yet',
    ])
    expect(visit.missing).toContain('Measure chambers: chamber 2 has no cc yet')
    expect(visit.missing).not.toContain('Measure chambers: chamber 1 has no cc yet')
    expect(visit.missing).toContain('chamber 2 has no finished cc')
    expect(visit.missing.at(-1)).toBe('Final inspection: no final inspection yet')
  })

  it('is each chamber out of tolerance, by how much', () => {
    // Target 60.0 ± 0.5: 61.3 is 1.3 over, 59.4 is 0.6 under, 60.5 and 59.5 are just inside.
    expect(done(60.5, 61.3, 59.4, 59.5).missing).toEqual([
      'chamber 2 is 1.3 cc over the target of 60 (tolerance 0.5)',
      'chamber 3 is 0.6 cc under the target of 60 (tolerance 0.5)',
    ])
  })

  it('is the chamber under the class minimum', () => {
    const visit = done(60, 60, 60, 59.8).knows({ classMinCc: 60 })
    expect(visit.missing).toEqual(['chamber 4 is 0.2 cc under the class minimum of 60'])
  })

  it('is a deck that is not straight', () => {
    // 0.002 across; 0.001 a cylinder along, four cylinders: 0.004.
    const at = (across: number, along: number) =>
      done(60, 60, 60, 60).read('finished', ['straightness', 'across', across], ['straightness', 'along', along])
    expect(at(0.002, 0.004).missing).toEqual([])
    expect(at(0.003, 0.005).missing).toEqual([
      'straightness across is 0.0030 in (limit 0.0020 in)',
      'straightness along is 0.0050 in (limit 0.0040 in)',
    ])
  })

  it('is a seat too near the deck', () => {
    const visit = done(60, 60, 60, 60).read('seat-after', ['seat-depth', '1-exhaust', 0.002])
    expect(visit.missing).toEqual(['chamber 1 exhaust seat is 0.0020 in from the deck (minimum 0.0050 in)'])
  })

  it('is an open hold and a finding without an answer, which no waiver lets pass', () => {
    const visit = done(60, 60, 60, 60).knows({ openHolds: [{ reason: 'wrong head back' }], openFindings: 1 })
    const found = completeness(visit.facts)
    expect(found.map((entry) => lackText(entry.lack))).toEqual([
      'on hold: wrong head back',
      'a finding is waiting for the customer’s answer',
    ])
    expect(completeness(visit.facts, { waivedGaps: found.map((entry) => entry.gap) })).toEqual(found)
  })

  it('is an answer that was corrected to say stop after the tick', () => {
    const visit = done(60, 60, 60, 60).read('finished', ['cutter-marks', '', 'reaching'])
    expect(visit.missing).toEqual(['Measure finished: cutter marks by the inserts: reaching the sealing area'])
  })

  it('is work that undid what was done', () => {
    const visit = done(60, 60, 60, 60).note('valve-changed')
    expect(visit.missing).toContain('Measure finished must be done again: a valve was changed after it')
  })
})

describe('waivers', () => {
  it('let one gap pass, by its name, and no other', () => {
    const { facts } = done(60, 61.3, 61.4, 60)
    const [second] = completeness(facts)
    const left = completeness(facts, { waivedGaps: [second?.gap ?? ''] })
    expect(left.map((entry) => lackText(entry.lack))).toEqual([
      'chamber 3 is 1.4 cc over the target of 60 (tolerance 0.5)',
    ])
  })

  it('do not cover another reading at the same place', () => {
    const visit = done(60, 61.3, 60, 60)
    const waivedGaps = completeness(visit.facts).map((entry) => entry.gap)
    visit.read('finished', ['cc', '2', 63])
    expect(completeness(visit.facts, { waivedGaps }).map((entry) => lackText(entry.lack))).toEqual([
      'chamber 2 is 3 cc over the target of 60 (tolerance 0.5)',
    ])
  })

  it('of a whole step take its readings along, until later work undoes it', () => {
    const visit = Visit.of({ targetCc: 60, plan: flat(0.018) })
    visit.does('check-in').note('waive', 'seat-before')
    expect(visit.missing.filter((message) => message.startsWith('Seat check before'))).toEqual([])
    visit.note('waive', 'deburr')
    expect(visit.missing.filter((message) => message.startsWith('Deburr'))).toEqual([])
    for (const step of ['thickness', 'chambers', 'flat-cut'] as const) visit.does(step)
    expect(visit.missing).toContain('Deburr and chamfer must be done again: the deck was cut after it')
  })
})

describe('warnings', () => {
  it('say when the chambers of a pair do not match, and refuse nothing', () => {
    const { facts } = done(60.4, 60.4, 60.4, 60.4)
    // All eight: mean 60.0, each 0.4 from it; with 59.2 on the mate the mean is 59.8 and the worst 0.6 from it.
    expect(completenessWarnings(facts, { mateCc: [59.6, 59.6, 59.6, 59.6] })).toEqual([])
    const apart = completenessWarnings(facts, { mateCc: [59.2, 59.2, 59.2, 59.2] })
    // Four at 60.4 and four at 59.2: their mean is 59.8, and each is 0.6 from it.
    expect(apart).toEqual([
      { code: 'no-match', whose: 'pair', worstCc: expect.closeTo(0.6, 9) as number, matchCc: 0.5 },
    ])
    expect(apart.map(releaseWarningText)).toEqual([
      'The chambers of the pair do not match: one is 0.6 cc from the mean (match 0.5).',
    ])
    expect(completeness(facts, { mateCc: [59.2] })).toEqual([])
  })
})

it('in short lets a step that is not done stand for its readings, and keeps the readings of one that is', () => {
  const visit = Visit.of({ targetCc: 60, ordered: ['leak'] })
  const all = completeness(visit.facts)
  const short = inShort(all)
  expect(all.some(({ what }) => what === 'reading')).toBe(true)
  expect(short.every(({ what }) => what !== 'reading')).toBe(true)
  expect(short.map(({ gap }) => gap)).toEqual(all.filter(({ what }) => what !== 'reading').map(({ gap }) => gap))
  const ticked = all.filter(({ lack }) => lack.code !== 'not-done')
  expect(inShort(ticked)).toEqual(ticked)
})
