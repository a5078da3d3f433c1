import { expect, it } from 'vitest'
import { castingFigures } from '@/lib/core/casting/figures'
import { placesAcross, placesTurnedRound, type RecordPlaces } from '@/lib/core/casting/turned-round'

const record: RecordPlaces = {
  deepEdge: 'exhaust',
  figures: [
    { form: 'any', key: 'intakeValveXIn', value: 3 },
    { form: 'any', key: 'intakeValveZIn', value: 0.4 },
    { form: 'any', key: 'milledWidthIn', value: 7 },
  ],
  outlines: [{ form: 'as-cast', points: '1 1\n2 1\n2 2' }],
  bolts: [
    { label: 'A', xIn: 0.6 },
    { label: 'B', xIn: null },
  ],
}

it('while the deep edge stays nothing is turned round', () => {
  expect(placesTurnedRound(record, record)).toEqual([])
})

it('with another deep edge every place that is not entered anew is named; heights and widths are not', () => {
  expect(placesTurnedRound(record, { ...record, deepEdge: 'intake' })).toEqual([
    'intake valve from the shallow edge',
    'outline of the opening',
    'bolt hole A',
  ])
})

it('a place entered from the other edge is right: 7 − 3 = 4', () => {
  const anew: RecordPlaces = {
    deepEdge: 'intake',
    figures: [{ form: 'any', key: 'intakeValveXIn', value: 4 }],
    outlines: [],
    bolts: [{ label: 'A', xIn: 6.4 }],
  }
  expect(placesTurnedRound(record, anew)).toEqual([])
})

it('a place in the middle is as far from either edge, and may stay: 3.5 of 7', () => {
  const middle: RecordPlaces = {
    deepEdge: 'exhaust',
    figures: [
      { form: 'any', key: 'injectorXIn', value: 3.5 },
      { form: 'any', key: 'milledWidthIn', value: 7 },
    ],
    outlines: [],
    bolts: [{ label: 'A', xIn: 3.5 }],
  }
  expect(placesTurnedRound(middle, { ...middle, deepEdge: 'intake' })).toEqual([])
})

it('knows every place across that a record has', () => {
  const across = Object.keys(castingFigures).filter((key) => key.endsWith('XIn') || key === 'openingCentreIn')
  expect([...placesAcross].sort()).toEqual(across.sort())
})
