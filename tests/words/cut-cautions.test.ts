import { describe, expect, it } from 'vitest'
import type { CutCaution } from '@/lib/core/cut/cautions'
import { cutCautionText } from '@/lib/words/cut-cautions'

const stand = { ground: { by: 'read', valve: '3-exhaust' }, notRead: 3, tag: 'T-0412', notKnownOf: [] } as const
const tag = 'T-0412'

const said: readonly (readonly [CutCaution, string])[] = [
  [
    { code: 'steep', angleDeg: 0.516 },
    '0.52° is a steep angle: sources differ on how far one may go. The machinist in charge decides.',
  ],
  [
    { code: 'thickness-not-known', tags: [tag, 'T-0413'], leastIn: 4.3, rateProven: false },
    'The thickness of T-0412, T-0413 is not known: measure it before the cut, 4.300 in must stay. No cut of this shop proves the rate yet: cut in two passes.',
  ],
  [
    { code: 'uneven', targetCc: 60, toleranceCc: 0.5, chambers: [{ tag, chamber: 2, finishedCc: 61.04 }] },
    'Cutting alone cannot bring every chamber within 0.5 cc of 60: chamber 2 of T-0412 (61.0 cc). Equalise them, or open the small ones.',
  ],
  [
    { code: 'piston-to-valve', port: 'exhaust', leftIn: 0.0847, leastIn: 0.1 },
    'Piston to exhaust valve would be about 0.085 in; the shop asks for 0.100. An estimate: contact destroys an engine, so check the clearance at assembly.',
  ],
  [
    { code: 'seat-cut-through', port: 'exhaust', byIn: 0.0108, stand },
    'Stop: the deck has already cut through the sealing line of the exhaust seat, by 10.8 thou (read on this head, chamber 3 exhaust; 3 not read, taken like it). Hold the head: no cut without a new seat.',
  ],
  [
    { code: 'seat-near', port: 'intake', hold: true, marginIn: -0.002, leastIn: 0.01, stand },
    'The new deck would reach the sealing line of the intake seat (read on this head, chamber 3 exhaust; 3 not read, taken like it): do not make this cut without a new seat.',
  ],
  [
    { code: 'bolts-bottom', byIn: 0.012 },
    'The bolts would bottom in their blind holes by 12 thou: shorter bolts or deeper threads, as the maker of the engine says.',
  ],
  [
    {
      ...{ code: 'valve-past', tag, valve: '2-exhaust', side: 'under', afterIn: 0.027, limitIn: 0.03 },
      ...{ count: 5, sinkMoreIn: 0.003 },
    },
    'T-0412, chamber 2 exhaust: the valve would lie 0.0270 in below the deck, under the engine maker’s minimum of 0.0300 in (5 valves are past it, this one most): sink its seat 3 thou more, or cut less.',
  ],
  [
    {
      ...{ code: 'valve-past', tag, valve: '1-intake', side: 'under', afterIn: -0.002, limitIn: 0.024 },
      ...{ count: 1, sinkMoreIn: null },
    },
    'T-0412, chamber 1 intake: the valve would stand 0.0020 in proud of the deck, under the engine maker’s minimum of 0.0240 in: no seat work reaches it, or cut less.',
  ],
  [
    { code: 'injector-past', tag, chamber: '3', side: 'over', afterIn: 0.081, limitIn: 0.075 },
    'T-0412, chamber 3: the injector would stand 0.0810 in out of the deck, over the engine maker’s maximum of 0.0750 in: change its washer, as the maker says, or cut less.',
  ],
  [
    { code: 'no-deeper', tag, depthIn: 0.009, boundBy: 'recession', point: '1-exhaust' },
    'T-0412: without seat work no deeper than 9 thou, by the valve of chamber 1 exhaust.',
  ],
  [
    { code: 'no-deeper', tag, depthIn: 0.004, boundBy: 'protrusion', point: '2' },
    'T-0412: without seat work no deeper than 4 thou, by the injector of chamber 2.',
  ],
  [{ code: 'own-depth', tag, depthIn: 0.014 }, 'T-0412 is thicker: it is cut 14 thou to the same thickness.'],
  [{ code: 'as-said', words: 'As it was said.' }, 'As it was said.'],
]

describe('a caution of a cut in words', () => {
  it.each(said)('%j', (caution, text) => {
    expect(cutCautionText(caution)).toBe(text)
  })
})
