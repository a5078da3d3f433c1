import { ok, type Result } from '../errors'
import { knownFacts } from '../known-facts'
import { factOf } from '../units/fact-of'

/**
 * How far an injector stands out of the deck after a cut, in inches; below zero it lies behind the deck.
 *
 * @param beforeIn protrusion before, −0.25–0.5 in; @param cutIn what the cut takes at the injector, 0–0.5 in
 *
 * after = before + cut. Example: 0.060 before, 0.012 cut → 0.072.
 * Derived: the deck comes up by the cut, the injector stays where its seat in the head holds it.
 */
export function protrusionAfter(beforeIn: number | null | undefined, cutIn: number): Result<number> {
  const facts = knownFacts({
    beforeIn: factOf('injector protrusion', beforeIn, 'protrusion'),
    cutIn: factOf('depth of cut', cutIn, 'cutDepth'),
  })
  return facts.ok ? ok(facts.value.beforeIn + facts.value.cutIn) : facts
}
