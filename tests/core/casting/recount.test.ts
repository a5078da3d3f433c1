import { expect, it } from 'vitest'
import { countedFromOtherEdge } from '@/lib/core/casting/recount'
import { placesTurnedRound } from '@/lib/core/casting/turned-round'

const typed = {
  figures: {
    any: {
      milledWidthIn: '7.000',
      intakeValveXIn: '3.000',
      exhaustValveXIn: '101.6 mm',
      intakeValveAngleDeg: '23.0',
      exhaustValveAngleDeg: '−14',
      intakeValveZIn: '.520',
      portXIn: '',
      dowelXIn: 'about 1',
    },
    'as-cast': { openingCentreIn: '2.55', nominalCc: '64' },
  },
  outlines: { 'as-cast': '1 1\n2 1\n2 2.5', machined: '' },
  bolts: ['.600', '', '6.4'],
}

it('7 − 3 = 4, 7 − 101.6/25.4 = 3, 7 − 2.55 = 4.45; angles change their sign, all else stays', () => {
  const found = countedFromOtherEdge(typed, '7.000')
  expect(found).toEqual({
    ok: true,
    value: {
      figures: {
        any: {
          milledWidthIn: '7.000',
          intakeValveXIn: '4',
          exhaustValveXIn: '3',
          intakeValveAngleDeg: '-23',
          exhaustValveAngleDeg: '14',
          intakeValveZIn: '.520',
          portXIn: '',
          dowelXIn: 'about 1',
        },
        'as-cast': { openingCentreIn: '4.45', nominalCc: '64' },
      },
      // The traced points: across 7 − 1 and 7 − 2, along as they were.
      outlines: { 'as-cast': '6 1\n5 1\n5 2.5', machined: '' },
      bolts: ['6.4', '', '0.6'],
      unread: ['dowels from the shallow edge'],
    },
  })
})

it('twice is as it was, in inches', () => {
  const once = countedFromOtherEdge(typed, '7.000')
  const twice = once.ok ? countedFromOtherEdge(once.value, '7.000') : once
  expect(twice.ok && twice.value.figures.any).toMatchObject({ intakeValveXIn: '3', exhaustValveXIn: '4' })
  expect(twice.ok && twice.value.bolts).toEqual(['0.6', '', '6.4'])
})

it('is refused without a milled width', () => {
  expect(countedFromOtherEdge(typed, '')).toMatchObject({ ok: false, refusal: { needs: ['milledWidthIn'] } })
})

it('leaves no place that would lie at the other side', () => {
  const record = (deepEdge: string, xIn: number) => ({
    deepEdge,
    figures: [{ form: 'any', key: 'intakeValveXIn', value: xIn }],
    outlines: [],
    bolts: [],
  })
  const found = countedFromOtherEdge(typed, '7.000')
  const moved = found.ok ? Number(found.value.figures.any?.intakeValveXIn) : NaN
  expect(placesTurnedRound(record('exhaust', 3), record('intake', moved))).toEqual([])
})
