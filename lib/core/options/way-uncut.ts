import type { BenchQuestion, Start, CutOption } from './bench-types'
import { wayOf } from './way-of'

/** Nothing is cut: it is where it should be, as it came or as its maker cut it. */
export function leaveWay(question: BenchQuestion, start: Start, finishedCc: number): CutOption {
  return wayOf(question, start, { kind: 'leave', worked: null, ruledOut: '', finishedCc })
}

/** The target is above what the chambers hold: metal must go from the chamber, not from the deck. */
export function openWay(question: BenchQuestion, start: Start, finishedCc: number): CutOption {
  const openCc = (question.targetCc ?? finishedCc) - finishedCc
  return wayOf(question, start, {
    kind: 'open',
    worked: null,
    ruledOut: '',
    finishedCc: finishedCc + openCc,
    opensCc: openCc,
    cautions: [{ code: 'opening' }],
  })
}
