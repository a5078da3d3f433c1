import { readingSpecs } from '../readings/specs'
import type { ReadingKind } from '../readings/types'
import { outside } from './compare'
import { expected } from './expected'
import { likelySlip, type Slip, type Typed } from './slips'
import { figureKey, type Expected, type ExpectedFacts, type Figures } from './types'

/** A figure that is being kept, with how it was typed. */
export type TypedFigure = Typed & { readonly kind: ReadingKind; readonly point: string }

/** A figure that is unlikely: it is kept only when it is typed a second time. */
export type Question = {
  readonly kind: ReadingKind
  readonly point: string
  readonly value: number
  readonly side: 'low' | 'high'
  readonly expected: Expected
  /** Of several one is off, and nothing says which: all of them, this one too. Empty: it is this one. */
  readonly oneOf: readonly string[]
  /** What was likely meant. */
  readonly slip: Slip | null
}

/**
 * Which of the figures typed at a step are unlikely. Of several that do not agree the one is asked about without which the
 * others do; where any of them could be it, all are.
 *
 * @param typed figures within the limits of entry; @param facts `here` holds what was kept at this step before
 *
 * Example: flow 168, 18.4, 190 at 0.3, 0.4, 0.5 in: without 18.4 the others agree, so that one is asked about, 184 offered.
 * Derived: `expected` of each, the odd one left out, until the rest agree.
 */
export function questionsOf(typed: readonly TypedFigure[], facts: ExpectedFacts): Question[] {
  const here = { ...facts.here, ...Object.fromEntries(typed.map((one) => [keyOf(one), one.value])) }
  const groups = [...new Set(typed.map(groupOf))].sort((a, b) => Number(isDepth(b)) - Number(isDepth(a)))
  const asked: Question[] = []
  for (const group of groups) {
    const depthDoubted = asked.some(({ kind }) => kind === 'cut-depth' || kind === 'edge-depth')
    const known = { ...facts, here, ...(depthDoubted ? { cut: null } : {}) }
    asked.push(
      ...questionsIn(
        typed.filter((one) => groupOf(one) === group),
        known,
      ),
    )
  }
  return asked
}

const keyOf = ({ kind, point }: { kind: ReadingKind; point: string }): string => figureKey(kind, point)

/** What the cut took is looked at first: chambers are held against it. */
const isDepth = (group: string): boolean => group === 'cut-depth' || group === 'edge-depth'

/** Readings that can stand for one another; each port is a run of its own. */
const groupOf = ({ kind, point }: { kind: ReadingKind; point: string }): string =>
  kind === 'flow' ? `flow ${point.split('@')[0]}` : kind

function questionsIn(typed: readonly TypedFigure[], facts: ExpectedFacts): Question[] {
  const first = typed[0]
  if (!first) return []
  const all = Object.keys(facts.here).filter((key) => groupOf(placeOf(key)) === groupOf(first))
  let left = all
  const blamed = new Map<string, readonly string[]>()
  const stored = all.filter((key) => !typed.some((one) => keyOf(one) === key))
  for (;;) {
    const off = left.filter((key) => isOff(key, left, facts))
    if (!off.some((key) => !stored.includes(key))) break
    const { odd, helps } = oddOnes(off, left, facts)
    const named = odd.length > 1 && helps ? withSlip(odd, typed, left, facts) : odd
    for (const key of named) blamed.set(key, named.length > 1 && helps ? named : [])
    left = left.filter((key) => !named.includes(key))
  }
  return typed.flatMap((one) => {
    const among = blamed.get(keyOf(one))
    const question = among && questionAt(one, typed, [...left, keyOf(one)], facts, among)
    return question ? [question] : []
  })
}

function placeOf(key: string): { readonly kind: ReadingKind; readonly point: string } {
  const [kind = '', point = ''] = key.split('|')
  return { kind: kind as ReadingKind, point }
}

/** The figures of other kinds, and of this kind only those that are left, without the one asked about. */
function beside(key: string, left: readonly string[], { here }: ExpectedFacts): Figures {
  const group = groupOf(placeOf(key))
  return Object.fromEntries(
    Object.entries(here).filter(
      ([other]) => other !== key && (groupOf(placeOf(other)) !== group || left.includes(other)),
    ),
  )
}

function expectedAt(key: string, left: readonly string[], facts: ExpectedFacts): Expected | null {
  const { kind, point } = placeOf(key)
  return expected(kind, point, { ...facts, here: beside(key, left, facts) })
}

function isOff(key: string, left: readonly string[], facts: ExpectedFacts): boolean {
  const held = expectedAt(key, left, facts)
  return held !== null && outside(facts.here[key] ?? NaN, held) !== null
}

/** Whether a figure would be believed in another cell. */
function fits(value: number, key: string, left: readonly string[], facts: ExpectedFacts): boolean {
  const held = expectedAt(key, left, facts)
  return held !== null && outside(value, held) === null
}

/**
 * Those without which the fewest of the others are off. `helps`: without one of them another is no longer off; where it is
 * not, each is off by itself.
 */
function oddOnes(off: readonly string[], left: readonly string[], facts: ExpectedFacts) {
  const still = off.map((key) => {
    const rest = left.filter((other) => other !== key)
    return { key, count: rest.filter((other) => isOff(other, rest, facts)).length }
  })
  const least = Math.min(...still.map(({ count }) => count))
  const odd = still.filter(({ count }) => count === least).map(({ key }) => key)
  return { odd, helps: least < off.length - 1 }
}

/** Of several that could be the odd one, the only one that a likely slip explains. */
function withSlip(
  odd: readonly string[],
  typed: readonly TypedFigure[],
  left: readonly string[],
  facts: ExpectedFacts,
): readonly string[] {
  const explained = typed.filter((one) => odd.includes(keyOf(one)) && questionAt(one, typed, left, facts, [])?.slip)
  return explained.length === 1 ? explained.map(keyOf) : odd
}

function questionAt(
  one: TypedFigure,
  typed: readonly TypedFigure[],
  left: readonly string[],
  facts: ExpectedFacts,
  among: readonly string[],
): Question | null {
  const { kind, point, value } = one
  const { quantity } = readingSpecs[kind]
  // Where all were left out, since any of them could be it, each is shown as it stood among the others.
  const held = [left, Object.keys(facts.here)]
    .map((among) => expectedAt(keyOf(one), among, facts))
    .find((answer) => answer !== null && outside(value, answer) !== null)
  const side = held && outside(value, held)
  if (!held || !side || !quantity) return null
  const neighbours = typed.filter(
    (other) => other.kind === kind && other.point !== point && fits(value, keyOf(other), left, facts),
  )
  return {
    kind,
    point,
    value,
    side,
    expected: held,
    oneOf: among.map((key) => placeOf(key).point),
    slip: likelySlip(one, quantity, (meant) => outside(meant, held) === null, neighbours),
  }
}
