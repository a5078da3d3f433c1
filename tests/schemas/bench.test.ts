import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { castingFigureKeys } from '@/lib/core/casting/figures'
import { engineFigureKeys } from '@/lib/core/engine/figures'
import { keepEstimateSchema } from '@/lib/schemas/bench'
import { benchFromQuery, benchQuery, emptyBench, readBench, type BenchForm } from '@/lib/schemas/bench-question'

const typed = (more: Partial<BenchForm>) => readBench({ ...emptyBench(), ...more })

describe('a question as typed', () => {
  it.each([
    ['64', [64]],
    ['64.1 64,3 63.9 64.0', [64.1, 64.3, 63.9, 64]],
    ['64.1;64.3', [64.1, 64.3]],
    ['62 cc', [62]],
    ['', []],
  ])('chamber now %j', (presentCc, expected) => {
    expect(typed({ presentCc }).asked.presentCc).toEqual(expected)
  })

  it('reads each figure in its own unit, and keeps the rest when one cannot be read', () => {
    const { asked, errors } = typed({
      targetCc: '61',
      sinkIn: '10 thou',
      classMaxCut: 'a hair',
      engine: { boreIn: '4 1/8', strokeIn: '88.4 mm' },
      figures: { thicknessNewIn: '4.25' },
    })
    expect(asked.targetCc).toBe(61)
    expect(asked.sinkIn).toBe(0.01)
    expect(asked.engine.boreIn).toBe(4.125)
    expect(asked.engine.strokeIn).toBeCloseTo(88.4 / 25.4, 12)
    expect(asked.figures).toEqual({ thicknessNewIn: 4.25 })
    expect(Object.keys(errors)).toEqual(['classMaxCut'])
  })

  it('refuses to keep an estimate whose question has a figure that cannot be read, at that field', () => {
    const parsed = keepEstimateSchema.safeParse({
      question: { ...emptyBench(), targetCc: '61', engine: { boreIn: 'wide' } },
      wayId: 'own:flat',
      angleIn: null,
      forWhom: 'a caller',
      note: '',
    })
    expect(parsed.success).toBe(false)
    expect(parsed.error?.issues.map(({ path }) => path.join('.'))).toEqual(['question.engine.boreIn'])
  })
})

const words = fc.string({ maxLength: 40 }).map((text) => text.trim())
const record = (keys: readonly string[]) =>
  fc.dictionary(
    fc.constantFrom(...keys),
    words.filter((text) => text !== ''),
    { maxKeys: 5, noNullPrototype: true },
  )

describe('a question as a link', () => {
  it('comes back as it was typed, whatever was typed', () => {
    fc.assert(
      fc.property(
        fc.record({
          castingId: words,
          presentCc: words,
          measured: fc.boolean(),
          used: fc.boolean(),
          goneIn: words,
          targetCc: words,
          stopAtIn: words,
          sinkIn: words,
          thicknessIn: words,
          thicknessNow: words,
          intakeRecession: words,
          exhaustRecession: words,
          protrusion: words,
          classFlatOnly: fc.boolean(),
          classMinCc: words,
          classMaxCut: words,
          layout: fc.constantFrom('inline' as const, 'v' as const, 'unknown' as const),
          camInHead: fc.constantFrom('yes' as const, 'no' as const, 'unknown' as const),
          engine: record(engineFigureKeys),
          figures: record(castingFigureKeys),
        }),
        (form) => {
          expect(benchFromQuery(new URLSearchParams(benchQuery(form as BenchForm)))).toEqual(form)
        },
      ),
      { numRuns: 200 },
    )
  })

  it('leaves out what it does not know', () => {
    expect(benchFromQuery(new URLSearchParams('to=61&layout=round&boreIn=4.03&colour=red'))).toEqual({
      ...emptyBench(),
      targetCc: '61',
      engine: { boreIn: '4.03' },
    })
  })
})
