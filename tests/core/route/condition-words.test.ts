import { expect, test } from 'vitest'
import { conditionWords } from '@/lib/core/route/condition-words'
import { stepTable } from '@/lib/core/route/steps'

test('every step that comes on a condition says which, and no other does', () => {
  const conditional = stepTable.filter(({ cells }) => cells.includes('◐')).map(({ ref }) => ref)
  expect(Object.keys(conditionWords).toSorted()).toEqual(conditional.toSorted())
})
