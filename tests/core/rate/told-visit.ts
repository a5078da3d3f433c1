import type { CutFacts } from '@/lib/core/rate/shop-cut'
import type { ReadingKind } from '@/lib/core/readings/types'
import type { StepId } from '@/lib/core/route/step-ids'
import type { OrderFacts, VisitEvent } from '@/lib/core/route/types'

/** A visit told in the order it happened: each entry is one event later than the one before. */
export type Told =
  | readonly ['read', StepId, ReadingKind, Readonly<Record<string, number | string>>]
  | readonly ['tick' | 'undo' | 'start', StepId]
  | readonly ['back', readonly StepId[], Partial<OrderFacts>?]
  | readonly ['valve']

const order = 'o-1'

export function visit(told: readonly Told[], over: Partial<CutFacts> = {}): CutFacts {
  const readings: CutFacts['readings'][number][] = []
  const events: VisitEvent[] = []
  const orders: OrderFacts[] = []
  told.forEach((entry, at) => {
    const seq = at + 1
    const key = (stepId: StepId) => ({
      stepId,
      occurrence: '',
      orderId: stepId.startsWith('arrival') ? order : null,
    })
    if (entry[0] === 'valve') events.push({ seq, kind: 'valve-changed', step: null })
    else if (entry[0] === 'back') {
      events.push({ seq, kind: 'received', step: null })
      orders.push({
        orderId: order,
        number: '1',
        vendor: 'V',
        scope: entry[1],
        angleIn: 0,
        flatIn: 0,
        sentSeq: seq - 1,
        receivedSeq: seq,
        confirmed: entry[1],
        seatsIn: true,
        ...entry[2],
      })
    } else {
      const [kind, stepId] = entry
      events.push({ seq, kind, step: key(stepId) })
      if (entry[0] !== 'read') return
      for (const [point, value] of Object.entries(entry[3])) {
        readings.push({
          id: `${seq}-${point}`,
          seq,
          kind: entry[2],
          point,
          value: typeof value === 'number' ? value : null,
          text: String(value),
          notTaken: null,
          step: key(stepId),
        })
      }
    }
  })
  return {
    readings,
    events,
    orders,
    deck: { deepEdge: 'exhaust', milledWidthIn: 6, deckLengthIn: 20, inset: { edgeIn: 0, endIn: 0 } },
    burette: { divisionCc: 0.2, repeatabilityCc: 0.3 },
    ...over,
  }
}

/** Every step that was read at is ticked in the end: only ticked steps teach. */
export const ticked = (told: readonly Told[]): Told[] => {
  const steps = ['chambers', 'open-chamber', 'angle-cut', 'flat-cut', 'finished', 'arrival-figures'] as const
  const read = steps.filter((stepId) => told.some((entry) => entry[0] === 'read' && entry[1] === stepId))
  return [...told, ...read.map((stepId): Told => ['tick', stepId])]
}
