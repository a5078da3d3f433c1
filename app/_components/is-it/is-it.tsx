'use client'
import type { AlikeHeadSeen, AlikeSeen } from '@/lib/use-cases/customers/see-alike'
import { Button } from '../ui/button'
import { Notice } from '../ui/notice'

type Customer = AlikeSeen['customers'][number]

type CustomersProps = {
  customers: readonly Customer[]
  /** Those of whom somebody said that it is another. */
  not: readonly string[]
  onYes: (customer: Customer) => void
  onNo: (id: string) => void
}

const because = { phone: 'same phone number', email: 'same e-mail address', name: 'name like it' } as const

/**
 * "Is it …?" for the customer of a booking, one question after the other. `customers` from `useAlike`; on yes the form takes
 * the customer (`customer.id`), on no it keeps the id in `notThese.customers`.
 */
export function IsItCustomer({ customers, not, onYes, onNo }: CustomersProps) {
  const next = customers.find(({ id }) => !not.includes(id))
  if (!next) return null
  const told = [next.phone, next.address, next.lastJob && `last job ${next.lastJob}`].filter(Boolean).join(', ')
  return (
    <Notice kind="caution" title={`Is it ${next.name}?`}>
      <p>
        {told} ({because[next.by]})
      </p>
      <div className="row">
        <Button variant="main" onClick={() => onYes(next)}>
          Yes, {next.name}
        </Button>
        <Button onClick={() => onNo(next.id)}>No, somebody else</Button>
      </div>
    </Notice>
  )
}

type HeadProps = {
  heads: readonly AlikeHeadSeen[]
  /** Which head of the booking is asked about. */
  at: number
  not: readonly string[]
  onYes: (head: AlikeHeadSeen) => void
  onNo: (headId: string) => void
}

/** The same for a head: on yes the form takes it (`heads[at].headId`), on no it keeps the id in `notThese.heads`. */
export function IsItHead({ heads, at, not, onYes, onNo }: HeadProps) {
  const next = heads.find((head) => head.at === at && !not.includes(head.headId))
  if (!next) return null
  const name = next.tag || next.stamp
  const told = [next.stamp, next.marks, next.casting, next.lastJob && `job ${next.lastJob}`, next.customer]
  return (
    <Notice kind="caution" title={`Is it head ${name}?`}>
      <p>
        {told.filter(Boolean).join(', ')} (same {next.by})
      </p>
      <div className="row">
        <Button variant="main" onClick={() => onYes(next)}>
          Yes, this head
        </Button>
        <Button onClick={() => onNo(next.headId)}>No, another head</Button>
      </div>
    </Notice>
  )
}
