import type { Whereabouts } from '@/lib/core/route/types'
import type { FoundJob } from '@/lib/data/jobs-found'
import type { KnownHead } from '@/lib/data/known-heads'

export type HeadHit = {
  readonly kind: 'head'
  readonly href: string
  readonly headId: string
  /** The tag it wears, or wore last; '' when it never had one. */
  readonly tag: string
  /** False: the tag has come off since. */
  readonly worn: boolean
  readonly stamp: string
  readonly marks: string
  readonly castingId: string | null
  readonly casting: string
  readonly jobNumber: string
  readonly customer: string
  readonly promiseOn: string | null
  readonly whereabouts: Whereabouts | null
}

export type JobHit = {
  readonly kind: 'job'
  readonly href: string
  readonly number: string
  readonly customer: string
  readonly phone: string
  readonly promiseOn: string | null
  readonly tags: readonly string[]
  readonly whereabouts: readonly Whereabouts[]
}

export type CustomerHit = {
  readonly kind: 'customer'
  readonly href: string
  readonly name: string
  readonly phone: string
}

export type Hit = HeadHit | JobHit | CustomerHit

export function headHit(head: KnownHead): HeadHit {
  const tag = head.tags.find((entry) => entry.to === null) ?? head.tags[0]
  return {
    kind: 'head',
    href: `/heads/${head.id}`,
    headId: head.id,
    tag: tag?.number ?? '',
    worn: tag !== undefined && tag.to === null,
    stamp: head.stamp,
    marks: head.marks,
    castingId: head.castingId,
    casting: head.casting,
    jobNumber: head.visit?.jobNumber ?? '',
    customer: head.visit?.customer ?? '',
    promiseOn: head.visit?.promiseOn ?? null,
    whereabouts: (head.visit?.whereabouts ?? null) as Whereabouts | null,
  }
}

export const jobHit = ({ number, customer, phone, promiseOn, tags, whereabouts }: FoundJob): JobHit => ({
  kind: 'job',
  href: `/jobs/${number}`,
  number,
  customer,
  phone,
  promiseOn,
  tags,
  whereabouts: [...new Set(whereabouts as readonly Whereabouts[])],
})

export const customerHit = ({ customerId, name, phone }: FoundCustomer): CustomerHit => ({
  kind: 'customer',
  href: `/customers/${customerId}`,
  name,
  phone,
})

type FoundCustomer = { readonly customerId: string; readonly name: string; readonly phone: string }
