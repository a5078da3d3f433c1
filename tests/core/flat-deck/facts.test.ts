import { expect, it } from 'vitest'
import { flatDeckFactsOf } from '@/lib/core/flat-deck/past-maker'

it('injectors are read where the maker gives a limit for them, be it one end alone', () => {
  expect(flatDeckFactsOf({}, 2).hasInjectors).toBe(false)
  expect(flatDeckFactsOf({ injectorProtrusionLeastIn: 0.05 }, 2).hasInjectors).toBe(true)
  expect(flatDeckFactsOf({ injectorProtrusionMostIn: 0.075 }, 2).hasInjectors).toBe(true)
})

it('every valve is read by itself, by the counts on record', () => {
  expect(flatDeckFactsOf({ intakeValves: 2 }, 2).valves).toEqual([
    ...['1-intake', '1-intake-2', '1-exhaust'],
    ...['2-intake', '2-intake-2', '2-exhaust'],
  ])
  expect(flatDeckFactsOf({}, 1).valves).toEqual(['1-intake', '1-exhaust'])
})
