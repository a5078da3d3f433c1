import type { SpecSheetData, SpecWaiver } from '@/lib/core/spec/spec-sheet'
import { declinedOf } from '../declined'
import { finishedDrawing } from '../head-drawing'
import { shopBlock } from '../shop-block'
import type { Dossier } from '../dossier'
import { chambersOf } from './spec-chambers'
import { compressionNotes, compressionOf } from './spec-compression'
import { cautionsOf } from './spec-cautions'
import { cutsOf, cutterMarkWords, removedWords } from './spec-cuts'
import { flatDeckGroup } from './spec-flat-deck'
import { flowOf } from './spec-flow'
import { specValves } from './spec-valve-table'
import { groupsOf } from './spec-groups'
import { headlineOf } from './spec-headline'
import { askedWords, castingWords, doneWords, engineWords, marksWords, sideWords } from './spec-words'
import { dateWords, momentWords, type WhenManner } from '@/lib/core/shop/when-words'

export type SpecShop = WhenManner & Parameters<typeof shopBlock>[0]

/** How the visit ended: what the sheet says beside what was measured. */
export type SpecEnd = Pick<
  SpecSheetData,
  'revision' | 'revisionReason' | 'earlier' | 'outcome' | 'releasedBy' | 'notDone' | 'notes'
> & {
  readonly at: Date
}

/** Everything the spec sheet of one visit says, from what is on record of it. */
export function specSheetOf(
  head: Dossier,
  shop: SpecShop,
  end: SpecEnd,
  nameOf: (personId: string) => string,
): SpecSheetData {
  const { visit } = head
  const { at, ...ended } = end
  const flow = flowOf(head)
  const valves = specValves(head)
  const side = sideWords(visit.handOver?.side ?? visit.side)
  return {
    shape: 1,
    language: shop.locale,
    shop: shopBlock(shop),
    ...ended,
    releasedAt: momentWords(at, shop),
    jobNumber: visit.job.number,
    customer: visit.job.customer.contact?.name ?? '',
    engine: engineWords(visit.job.engine),
    tag: head.label,
    casting: castingWords(head),
    marks: marksWords(head),
    side: side === '' ? null : side,
    pairTags: head.mates.map(({ label }) => label),
    asked: askedWords(head),
    done: doneWords(head.route),
    headline: headlineOf(head, flow),
    drawing: finishedDrawing(head),
    chambers: chambersOf(head),
    cuts: cutsOf(head),
    removedSinceNew: removedWords(head),
    compression: compressionOf(head),
    ...(valves ? { valves } : {}),
    groups: [...flatDeckGroup(head), ...groupsOf(head, valves !== null)],
    flow,
    waivers: waiversOf(head, shop, nameOf),
    declined: declinedOf(head, shop),
    cutterMarks: cutterMarkWords(head),
    cautions: cautionsOf(head),
    notes: [...end.notes, ...compressionNotes(head)],
  }
}

const waiversOf = ({ visit }: Dossier, shop: SpecShop, nameOf: (id: string) => string): SpecWaiver[] =>
  visit.waivers
    .filter((waiver) => waiver.touchesCustomer)
    .map(({ what, reason, byId, at }) => ({ what, reason, by: nameOf(byId), at: dateWords(at, shop) }))
