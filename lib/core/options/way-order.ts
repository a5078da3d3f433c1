import { counted } from '../counted'
import { formatThou } from '../units/format-figure'
import type { CutOption } from './bench-types'

/**
 * What makes one way milder than another, the weightiest first: how much of it there is, and what is said of a way that
 * has more of it than the one before.
 */
const criteria: readonly {
  readonly of: (way: CutOption) => number
  readonly more: (way: CutOption, than: CutOption) => string
}[] = [
  { of: ({ ruledOut }) => (ruledOut === '' ? 0 : 1), more: () => 'it is ruled out' },
  { of: ({ start }) => (start.supply === 'own' ? 0 : 1), more: () => 'another casting must be bought' },
  {
    of: ({ cautions }) => cautions.length,
    more: (way, than) => counted(way.cautions.length - than.cautions.length, 'more caution', 'more cautions'),
  },
  {
    of: ({ steps }) => steps.length,
    more: (way, than) => counted(way.steps.length - than.steps.length, 'more step', 'more steps'),
  },
  {
    of: ({ days }) => days ?? Infinity,
    more: (way, than) =>
      way.days === null || than.days === null
        ? 'nobody knows how long it is out'
        : counted(Math.ceil(way.days - than.days), 'more day', 'more days'),
  },
  {
    of: (way) => deepestIn(way),
    more: (way, than) => `${formatThou(deepestIn(way) - deepestIn(than))} deeper`,
  },
  { of: ({ priceMinor }) => priceMinor ?? 0, more: () => 'it costs more' },
]

const deepestIn = ({ worked }: CutOption): number => worked?.plan.deepestIn ?? 0

/** Mildest first, each with why it stands where it stands. */
export function inOrder(ways: readonly CutOption[]): readonly CutOption[] {
  const sorted = ways.toSorted((a, b) => {
    const heavier = criteria.find(({ of }) => of(a) !== of(b))
    return heavier ? heavier.of(a) - heavier.of(b) : 0
  })
  return sorted.map((way, place) => ({ ...way, why: whyHere(way, sorted[place - 1]) }))
}

function whyHere(way: CutOption, before: CutOption | undefined): string {
  if (way.ruledOut !== '') return 'last: it is ruled out'
  if (!before) return way.steps.length === 0 ? 'nothing is taken off' : 'the fewest and mildest consequences'
  const heavier = criteria.find(({ of }) => of(way) !== of(before))
  return heavier ? heavier.more(way, before) : 'as mild as the one before'
}
