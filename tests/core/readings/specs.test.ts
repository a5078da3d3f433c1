import { describe, expect, it } from 'vitest'
import { answers, badChoice } from '@/lib/core/readings/answered'
import { pointLabel, pointsOf } from '@/lib/core/readings/points'
import { readingSpecs } from '@/lib/core/readings/specs'
import { readingKinds, type ReadingFact } from '@/lib/core/readings/types'
import { quantityNames } from '@/lib/core/units/quantities'

describe('what each reading looks like', () => {
  it('is described for every kind: a figure has its quantity, a choice its answers, a note its hint', () => {
    for (const kind of readingKinds) {
      const spec = readingSpecs[kind]
      expect(spec.kind).toBe(kind)
      expect(spec.label.length, kind).toBeGreaterThan(2)
      expect(spec.form === 'figure', kind).toBe(spec.quantity !== undefined)
      expect(spec.form === 'choice', kind).toBe(spec.choices !== undefined)
      if (spec.quantity) expect(quantityNames).toContain(spec.quantity)
      if (spec.form === 'note') expect(spec.hint, kind).toBeTruthy()
      const values = spec.choices?.map((choice) => choice.value) ?? []
      expect(new Set(values).size, kind).toBe(values.length)
      if (spec.choices)
        expect(
          spec.choices.some((choice) => !choice.bad),
          kind,
        ).toBe(true)
    }
  })

  it('says stop where the design says hold', () => {
    const stops = (kind: keyof typeof readingSpecs) =>
      readingSpecs[kind].choices?.filter((choice) => choice.bad).map((choice) => choice.value)
    expect(stops('crack')).toEqual(['crack'])
    expect(stops('pressure')).toEqual(['leaks'])
    expect(stops('cutter-marks')).toEqual(['reaching'])
    expect(stops('inspection')).toEqual(['no'])
  })
})

describe('points', () => {
  it('are counted from the marked end', () => {
    expect(pointsOf('one', { chambers: 4 })).toEqual([''])
    expect(pointsOf('chambers', { chambers: 3 })).toEqual(['1', '2', '3'])
    expect(pointsOf('corners', { chambers: 4 })).toEqual(['intake-1', 'exhaust-1', 'intake-2', 'exhaust-2'])
    expect(pointsOf('chamber-valves', { chambers: 2 })).toEqual(['1-intake', '1-exhaust', '2-intake', '2-exhaust'])
    expect(pointsOf('flow', { chambers: 4, liftsIn: [0.05, 0.3] })).toEqual([
      'intake@0.050',
      'intake@0.300',
      'exhaust@0.050',
      'exhaust@0.300',
    ])
  })

  it('read as words', () => {
    const words = ['3', 'intake-1', '2-exhaust', 'intake@0.300', 'across', 'end-2', 'exhaust', ''].map(pointLabel)
    expect(words).toEqual([
      'chamber 3',
      'intake end 1',
      'chamber 2 exhaust',
      'intake at 0.300 in',
      'across',
      'end 2',
      'exhaust',
      '',
    ])
  })
})

describe('an answer', () => {
  const reading = (facts: Partial<ReadingFact>): ReadingFact => ({
    id: 'r1',
    seq: 1,
    kind: 'cc',
    point: '1',
    value: null,
    text: '',
    notTaken: null,
    ...facts,
  })

  it('is a figure where a figure is asked; words do where words may', () => {
    expect(answers(reading({ value: 60, text: '60.0' }))).toBe(true)
    expect(answers(reading({ text: 'about sixty' }))).toBe(false)
    expect(answers(reading({ notTaken: 'burette broken' }))).toBe(false)
    expect(answers(reading({ kind: 'removed-before', text: 'new thickness unknown' }))).toBe(true)
    expect(answers(reading({ kind: 'flow', notTaken: 'coil bind' }))).toBe(true)
    expect(answers(reading({ kind: 'came-with', text: '  ' }))).toBe(false)
    expect(answers(reading({ kind: 'crack', text: 'none' }))).toBe(true)
  })

  it('that is bad says so in its label', () => {
    expect(badChoice(reading({ kind: 'crack', text: 'crack' }))?.label).toBe('Crack found')
    expect(badChoice(reading({ kind: 'crack', text: 'none' }))).toBeNull()
    expect(badChoice(reading({ value: 60, text: '60' }))).toBeNull()
  })
})
