'use client'
import type { AlikeHeadSeen, AlikeSeen } from '@/lib/use-cases/customers/see-alike'
import { Button } from '../ui/button'
import { Notice } from '../ui/notice'

type Customer = AlikeSeen['customers'][number]

type CustomersProps = {
  /** Those not answered yet. */
  customers: readonly Customer[]
  onYes: (customer: Customer) => void
  onNo: (id: string) => void
}

const because = { phone: 'same phone number', email: 'same e-mail address', name: 'name like it' } as const

/**
 * "Is it …?" for the customer of a booking, one question after the other. `customers` from `useAlike`; on yes the form takes
 * the customer (`customer.id`), on no it keeps the id in `notThese.customers`.
 */
export function IsItCustomer({ customers, onYes, onNo }: CustomersProps) {
  const [next] = customers
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
  /** Those not answered yet. */
  heads: readonly AlikeHeadSeen[]
  /** Which head of the booking is asked about. */
  at: number
  onYes: (head: AlikeHeadSeen) => void
  onNo: (head: AlikeHeadSeen) => void
}

/** The same for a head: on yes the form takes it (`heads[at].headId`), on no it keeps the id in `notThese.heads`. */
export function IsItHead({ heads, at, onYes, onNo }: HeadProps) {
  const next = heads.find((head) => head.at === at)
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
        <Button onClick={() => onNo(next)}>No, another head</Button>
      </div>
    </Notice>
  )
}
