import { ok, refuse, type Result } from '../errors'
import { knownFacts } from '../known-facts'
import { factOf } from '../units/fact-of'
import { ccPerIn3 } from '../units/factors'
import { quantities } from '../units/quantities'

export type Pocket = { readonly diameterIn: number | null | undefined; readonly recessionIn: number }

/** The recession of a valve that any cut can leave. */
const leastRecessionIn = quantities.recession.least - quantities.cutDepth.most
const mostRecessionIn = quantities.recession.most + quantities.sink.most

/**
 * Volume of one chamber's valve pockets in the deck, in cc; proud valves take from it, so that it can be below zero.
 *
 * @param pockets every valve of the chamber: head 0.3–5 in, recession −0.75–0.75 in
 *
 * Σ π/4·D²·recession·16.387064. Example: valves of 2.0 and 1.6 in, 0.040 and 0.050 deep → 3.71 cc; both 0.010 proud
 * → −0.84 cc.
 * Derived: a cylinder over each valve head.
 */
export function pocketsCc(pockets: readonly Pocket[]): Result<number> {
  if (pockets.length === 0) return refuse('missing', 'Needs the recession of the valves.', { needs: ['recession'] })
  let sumCc = 0
  for (const { diameterIn, recessionIn } of pockets) {
    const facts = knownFacts({
      diameterIn: factOf('valve', diameterIn, 'valveDiameter'),
      recessionIn: ['valve recession', recessionIn, leastRecessionIn, mostRecessionIn],
    })
    if (!facts.ok) return facts
    sumCc += (Math.PI / 4) * facts.value.diameterIn ** 2 * facts.value.recessionIn * ccPerIn3
  }
  return ok(sumCc)
}

/**
 * What a flat-deck head holds over one piston after a cut and seat work, in cc.
 *
 * @param readCc burette reading before, 0–400 cc; null: none was taken
 * @param before, @param after recession of every valve before and after
 *
 * A reading holds the pockets already: after = read + pockets after − pockets before. Without one the pockets are all.
 * Example: 3.7 cc of pockets before and 2.6 after → 2.6 without a reading, 3.9 with 5.0 cc read.
 * Derived: the deck is flat, so nothing but the pockets changes.
 */
export function flatDeckVolumeAfterCc(
  readCc: number | null,
  before: readonly Pocket[],
  after: readonly Pocket[],
): Result<number> {
  const afterCc = pocketsCc(after)
  if (readCc === null || !afterCc.ok) return afterCc
  const facts = knownFacts({ readCc: factOf('chamber volume', readCc, 'flatDeckVolume') })
  const beforeCc = pocketsCc(before)
  if (!facts.ok) return facts
  return beforeCc.ok ? ok(facts.value.readCc + afterCc.value - beforeCc.value) : beforeCc
}
