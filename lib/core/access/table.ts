import type { Grant, Role } from './roles'

const staff: readonly Role[] = ['counter', 'machinist', 'owner']
const desk: readonly Role[] = ['counter', 'owner']
const bench: readonly Role[] = ['machinist', 'owner']
const owner: readonly Role[] = ['owner']

type Rule = { readonly roles: readonly Role[]; readonly grant?: Grant }

/** Role × action: the one table. Every action of the app stands here, and nowhere else is a role compared. */
export const accessTable = {
  'job.see': { roles: staff },
  'job.book': { roles: desk },
  'job.change': { roles: desk },
  'price.see': { roles: desk },
  'price.change': { roles: desk },
  'payment.take': { roles: desk },
  'invoice.write': { roles: desk },
  'bookkeeping.see': { roles: owner },
  'call.log': { roles: desk },
  'message.write': { roles: desk },
  'head.tag': { roles: desk },
  'customer.see': { roles: desk },
  'customer.change': { roles: desk },
  'customer.export': { roles: owner },
  'customer.blank': { roles: owner },
  'customer.unmerge': { roles: owner },
  'customer-link.make': { roles: desk },
  'finding.report': { roles: staff },
  'finding.ask': { roles: desk },
  'paper.print': { roles: staff },
  'step.tick-bench': { roles: bench },
  'step.tick-desk': { roles: staff },
  'reading.record-bench': { roles: bench },
  'reading.record-desk': { roles: staff },
  'reading.correct': { roles: bench },
  'plan.make': { roles: staff },
  'plan.accept': { roles: desk },
  'plan.override': { roles: owner },
  'hold.open': { roles: staff },
  'hold.decide': { roles: owner },
  'photo.add': { roles: staff },
  'photo.withdraw': { roles: owner },
  'wait.open': { roles: staff },
  'wait.end': { roles: staff },
  'outside.see': { roles: staff },
  'outside.send': { roles: staff },
  'outside.receive': { roles: staff },
  'outside.cost': { roles: desk },
  'supply.order': { roles: desk },
  'supply.receive': { roles: staff },
  'supply.cost': { roles: desk },
  'visit.rack': { roles: staff },
  'visit.release': { roles: owner, grant: 'release' },
  'visit.waive': { roles: owner, grant: 'waive' },
  'visit.return-as-is': { roles: desk },
  'visit.hand-over': { roles: desk },
  'visit.hand-over-unpaid': { roles: owner },
  'visit.undo-hand-over': { roles: owner },
  'cut-bench.see': { roles: staff },
  'estimate.keep': { roles: staff },
  'casting.see': { roles: staff },
  'casting.change': { roles: owner },
  'vendor.change': { roles: owner },
  'person.change': { roles: owner },
  'settings.change': { roles: owner },
  'tablet.change': { roles: owner },
  'back-room.see': { roles: owner },
  'backup.make': { roles: owner },
  'export.take': { roles: owner },
} as const satisfies Record<string, Rule>

export type Action = keyof typeof accessTable
export const actions = Object.keys(accessTable) as Action[]
