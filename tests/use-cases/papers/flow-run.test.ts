import { describe, expect, it } from 'vitest'
import type { EffectiveReading } from '@/lib/core/readings/effective'
import { runNumber, runOf } from '@/lib/dossier/flow-run'

let seq = 0
const read = (point: string, value: number, run?: string, chamber = '2'): EffectiveReading => ({
  id: `r${(seq += 1)}`,
  seq,
  kind: 'flow',
  point,
  value,
  text: String(value),
  unit: 'cfm',
  notTaken: null,
  step: { stepId: 'flow', occurrence: 'before', orderId: null },
  setId: `s${run ?? ''}`,
  takenAt: new Date('2026-03-02T14:00:00Z'),
  byId: 'p-1',
  instrumentId: null,
  instrumentCheckedOn: null,
  conditions: JSON.stringify({ chamber, testPressureInH2O: '28', ...(run === undefined ? {} : { run }) }),
  confirmed: false,
  filled: false,
  heldAgainst: null,
  correctionReason: '',
  repeat: null,
})
const pointsOf = (...readings: EffectiveReading[]) =>
  runOf(readings, 'intake', 'h-1')?.run.points.map(({ liftIn, flowCfm }) => [liftIn, flowCfm])

describe('the run of a port that stands', () => {
  it('is the last one, whole and alone: a lift it did not go to is not filled from the one before', () => {
    expect(
      pointsOf(
        read('intake@0.200', 100),
        read('intake@0.400', 180),
        read('intake@0.600', 210),
        read('intake@0.200', 104, '2'),
        read('intake@0.400', 186, '2'),
      ),
    ).toEqual([
      [0.2, 104],
      [0.4, 186],
    ])
  })

  it('goes on when lifts are added to it later, and takes a lift that was read again', () => {
    expect(pointsOf(read('intake@0.200', 100, '1'), read('intake@0.400', 180), read('intake@0.200', 101))).toEqual([
      [0.2, 101],
      [0.4, 180],
    ])
  })

  it('is the last by its number, even when a lift of the first was entered after it', () => {
    expect(pointsOf(read('intake@0.200', 104, '2'), read('intake@0.600', 210, '1'))).toEqual([[0.2, 104]])
  })

  it('is each port’s own: a repeat of the exhaust leaves the intake’s first run standing, with its conditions', () => {
    const readings = [read('intake@0.200', 100, '1', '3'), read('exhaust@0.200', 80, '2', '4')]
    expect(pointsOf(...readings)).toEqual([[0.2, 100]])
    expect(runOf(readings, 'intake', 'h-1')?.chamber).toBe('3')
    expect(runOf(readings, 'exhaust', 'h-1')?.chamber).toBe('4')
    expect(runOf(readings.slice(0, 1), 'exhaust', 'h-1')).toBeNull()
  })

  it.each([
    ['{}', 1],
    ['{"run":"3"}', 3],
    ['{"run":"x"}', 1],
    ['{"run":"-2"}', 1],
  ])('%s is run %i', (conditions, number) => {
    expect(runNumber({ id: 'set', conditions })).toBe(number)
  })
})
