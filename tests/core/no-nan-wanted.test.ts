import fc from 'fast-check'
import { describe } from 'vitest'
import { defaultExpectedLimits } from '@/lib/core/expected/limits'
import { readingKinds } from '@/lib/core/readings/types'
import { stepTable } from '@/lib/core/route/steps'
import { allWanted, wantedAtStep, wantedLines } from '@/lib/core/wanted/at-step'
import { wantedFaults } from '@/lib/core/wanted/faults'
import { wantedGroups } from '@/lib/core/wanted/figures'
import { groupOfReading, wantedOfReading } from '@/lib/core/wanted/of-reading'
import { believed, ofEitherPort, wantedSpan } from '@/lib/core/wanted/spans'
import { toleranceOf } from '@/lib/core/wanted/tolerances'
import { wantedOf } from '@/lib/core/wanted/wanted-of'
import { wantedLine } from '@/lib/words/wanted'
import { maybe, plain } from './any-figure'
import { holds } from './holds'
import { anyFigures, anyWanted } from './wanted/any-wanted'

const group = fc.constantFrom(...wantedGroups)
const kind = fc.constantFrom(...readingKinds)
const point = fc.constantFrom('', 'intake', '3-exhaust', 'across', 'along', 'seat', 'open', '12')
const limits = fc.constant(defaultExpectedLimits)
const span = fc.record({
  value: maybe(plain(0, 4)),
  low: maybe(plain(0, 4)),
  high: maybe(plain(0, 4)),
  room: plain(0, 1),
})

describe('wanted figures', () => {
  holds(wantedOf, [fc.record({ head: anyFigures, job: anyFigures, casting: anyFigures, shop: anyFigures })])
  holds(wantedFaults, [anyWanted], 1000)
  holds(toleranceOf, [group, plain(-100, 1000), limits])
  holds(wantedSpan, [group, fc.constantFrom('intake', 'exhaust', 'across', 'along', null), anyWanted, limits], 1000)
  holds(ofEitherPort, [fc.record({ intake: fc.option(span), exhaust: fc.option(span) })])
  holds(believed, [span, plain(1, 100)])
  holds(groupOfReading, [kind, point])
  holds(wantedOfReading, [kind, point, anyWanted, limits], 1000)
  holds(wantedLines, [fc.array(group), anyWanted])
  holds(wantedAtStep, [fc.constantFrom(...stepTable.map(({ stepId }) => stepId)), anyWanted])
  holds(allWanted, [anyWanted])
  holds((wanted: Parameters<typeof allWanted>[0]) => allWanted(wanted).map(wantedLine), [anyWanted])
})
