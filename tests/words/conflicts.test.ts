import { expect, test } from 'vitest'
import { theirsAtText, theirsText } from '@/lib/words/conflicts'

const manner = { timeZone: 'America/New_York', locale: 'en-US' }

test('says who did what, and when by the clock of the shop', () => {
  const theirs = { who: 'Ada Quill', verb: 'tick', at: '2026-03-03T19:05:00.000Z' } as const
  expect(theirsText(theirs)).toBe('Ada Quill ticked this step')
  expect(theirsAtText(theirs, manner)).toBe('Ada Quill ticked this step, Mar 3, 2026, 2:05 PM')
})

test('says someone where the name is not known, and no time where none is', () => {
  expect(theirsAtText({ who: '', verb: 'undo', at: '' }, manner)).toBe('Someone took the tick back')
})
