import { describe, expect, it } from 'vitest'
import { chambersNow } from '@/lib/core/at-bench/chambers-now'
import { sinkFigures, type SinkInput } from '@/lib/core/at-bench/sink-figures'
import { benchLine, benchSentence } from '@/lib/words/at-bench'
import { ticked, visit, type Told } from '../rate/told-visit'

const four = (...values: number[]) => Object.fromEntries(values.map((value, at) => [String(at + 1), value]))
const before: Told = ['read', 'chambers', 'cc', four(64.2, 63.8, 64.1, 63.9)]
const depth: Told = ['read', 'flat-cut', 'cut-depth', { '': 0.018 }]
const atSize: Told = ['read', 'flat-cut', 'cc', { 'at-size': 61.2 }]
const sunk: Told = ['read', 'seat-work', 'sink', { '1-intake': 0.004 }]
const now = (...told: Told[]) =>
  chambersNow(visit(ticked(told))).map(({ chamber, cc, isReckoned }) => [chamber, Number(cc.toFixed(6)), isReckoned])

describe('what the chambers hold at the seat bench', () => {
  it('as they came while nothing was done to them', () => {
    expect(now(before)).toEqual([
      ['1', 64.2, false],
      ['2', 63.8, false],
      ['3', 64.1, false],
      ['4', 63.9, false],
    ])
  })

  it('one read after the cut stands for its loss: 64.2 − 61.2 = 3.0 off each of the others', () => {
    expect(now(before, depth, atSize)).toEqual([
      ['1', 61.2, false],
      ['2', 60.8, true],
      ['3', 61.1, true],
      ['4', 60.9, true],
    ])
  })

  it('all of them once they were read after it', () => {
    const finished: Told = ['read', 'finished', 'cc', four(61.4, 61.1, 61.3, 60.9)]
    expect(
      now(before, depth, ['tick', 'deburr'], ['tick', 'rinse'], finished).map(([, cc, isReckoned]) => [cc, isReckoned]),
    ).toEqual([
      [61.4, false],
      [61.1, false],
      [61.3, false],
      [60.9, false],
    ])
  })

  it('a chamber that was read after the seats is not pooled with what it held before them', () => {
    const finished: Told = ['read', 'finished', 'cc', { '1': 61.6 }]
    expect(now(before, depth, atSize, sunk, finished)[0]).toEqual(['1', 61.6, false])
  })

  it('not known while nothing was read since the cut, or since other work on them', () => {
    expect(now(before, depth)).toEqual([])
    expect(now(before, depth, atSize, ['tick', 'port'])).toEqual([])
    // What was read before the first pass is of before the cut, though it is kept with the depth.
    const told = visit([before, depth])
    const [read] = told.readings.slice(-1)
    const beforePass = { ...read!, id: 'b', kind: 'cc' as const, point: 'before', value: 64.1, text: '64.1' }
    expect(chambersNow({ ...told, readings: [...told.readings, beforePass] })).toEqual([])
  })
})

const input = (more: Partial<SinkInput> = {}): SinkInput => ({
  targetCc: 60,
  toleranceCc: 0.5,
  casting: { intakeValveIn: 2.05, exhaustValveIn: 1.6 },
  chambers: [
    { chamber: '1', cc: 58.9, isReckoned: false },
    { chamber: '2', cc: 59.2, isReckoned: true },
  ],
  cutToCome: null,
  ...more,
})
const words = (of: SinkInput) => sinkFigures(of).map((figure) => Object.values(benchLine(figure)).join(' · '))

describe('the sink that the cc target still allows', () => {
  // One thou at both valves: 16.387064·π/4·(2.05² + 1.60²)·0.001 = 16.387064 × 0.785398 × 6.7625 × 0.001 = 0.08704 cc.
  // 60.0 − 59.2 = 0.8 cc: 9.19 thou; 60.5 − 59.2 = 1.3 cc: 14.94 thou. Both down to a tenth.
  it('by the largest chamber, to the target and to the end of its tolerance', () => {
    expect(words(input())).toEqual([
      'Sink the cc target still allows · 9.1 thou to 60.0 cc, at most 14.9 thou · every valve alike; chamber 2, the largest, ' +
        'holds 59.2 cc (worked out from the chambers read after the cut); 1 thou adds 0.087 cc',
    ])
  })

  it('past the target there is the tolerance; past that, none', () => {
    const at = (cc: number) => words(input({ chambers: [{ chamber: '3', cc, isReckoned: false }] }))[0]
    // 60.5 − 60.2 = 0.3 cc: 3.45 thou.
    expect(at(60.2)).toContain(' · at most 3.4 thou · ')
    // 0.5 cc: 5.74 thou.
    expect(at(60)).toContain(' · at most 5.7 thou · ')
    expect(at(60.5)).toContain(' · none: 60.5 cc is past 60.0 cc ± 0.5 cc · ')
    expect(at(60.7)).toContain(' · none: 60.7 cc is past 60.0 cc ± 0.5 cc · ')
  })

  it('before the cut, what its plan counts on', () => {
    // 0.8704 cc ÷ 0.08704 cc a thou = 10.0 thou.
    expect(words(input({ cutToCome: { seatWorkGivesCc: 0.8704 } }))).toEqual([
      'Sink that the planned cut counts on · 10.0 thou · every valve alike; it adds 0.87 cc to each chamber',
    ])
  })

  it('names what it lacks; says nothing without a target', () => {
    expect(words(input({ casting: {} }))).toEqual([
      'Sink within the cc target · not known · needs intake valve, exhaust valve',
    ])
    expect(words(input({ chambers: [] }))).toEqual([
      'Sink within the cc target · not known · needs a chamber read after the last cut or work on it',
    ])
    expect(words(input({ targetCc: null }))).toEqual([])
  })

  it('stands on paper with the chamber that it was worked out from', () => {
    expect(benchSentence(sinkFigures(input()))).toContain(
      'at most 14.9 thou, every valve alike; chamber 2, the largest',
    )
  })
})
