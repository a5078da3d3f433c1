import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import type { StepId } from '@/lib/core/route/types'
import { db } from '@/lib/data/db'
import { visitWithRoute } from '@/lib/data/visits'
import { tagOf } from '../stations/see-step'

export type Sendable = {
  readonly visitId: string
  readonly tag: string
  readonly jobNumber: string
  readonly planWords: string
  readonly angleIn: number
  readonly flatIn: number
  readonly steps: readonly { readonly id: StepId; readonly label: string }[]
}

const neverOutside: readonly StepId[] = ['check-in', 'arrival-count', 'arrival-figures', 'final', 'hand-over']

/** The heads that can go together: the asked one and its mates, and which of their open steps could go out. */
export async function seeSending(actor: Actor, visitId: string) {
  must(allow(actor, 'outside.send'))
  const client = await db()
  const asked = await visitWithRoute(client, visitId)
  const mates = await client.visit.findMany({
    where: { pairId: asked.visit.pairId },
    select: { id: true },
    orderBy: { position: 'asc' },
  })
  const heads: Sendable[] = []
  for (const mate of mates) {
    const { visit, facts, route } = await visitWithRoute(client, mate.id)
    const open = route.filter((step) => ['to do', 'ready', 'do again'].includes(step.state) && !step.outside)
    heads.push({
      visitId: visit.id,
      tag: tagOf(visit),
      jobNumber: visit.job.number,
      planWords: facts.plan?.kind ?? 'none',
      angleIn: facts.plan?.angleIn ?? 0,
      flatIn: facts.plan?.flatIn ?? 0,
      steps: open
        .filter((step) => !neverOutside.includes(step.stepId))
        .map((step) => ({ id: step.stepId, label: step.label })),
    })
  }
  const vendors = await client.vendor.findMany({ where: { retiredAt: null }, orderBy: { name: 'asc' } })
  return { heads, vendors: vendors.map(({ id, name, services }) => ({ id, name, services })) }
}
