import { expect, it } from 'vitest'
import { fieldGroups } from '@/app/(staff)/stations/[station]/heads/[visit]/_components/answers'
import { readingSpecs } from '@/lib/core/readings/specs'
import type { ReadingKind } from '@/lib/core/readings/types'
import type { StepField } from '@/lib/use-cases/stations/see-step'

it('what one tap answers comes before the figures, each kind once, and otherwise in the order it is owed', () => {
  const field = (kind: ReadingKind, point = ''): StepField => ({
    ...{ kind, point, pointLabel: point, spec: readingSpecs[kind] },
    ...{ answer: null, notTaken: null, filled: false, previous: null, target: null },
  })
  const owed = [field('cc', '1'), field('cc', '2'), field('thickness', '1'), field('valves-used'), field('plug-used')]
  const groups = fieldGroups(owed)
  expect(groups.map(([first]) => first?.kind)).toEqual(['valves-used', 'plug-used', 'cc', 'thickness'])
  expect(groups[2]?.map(({ point }) => point)).toEqual(['1', '2'])
})
