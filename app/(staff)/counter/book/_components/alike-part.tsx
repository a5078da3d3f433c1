'use client'
import { useState } from 'react'
import { useWatch } from 'react-hook-form'
import { IsItCustomer, IsItHead } from '@/app/_components/is-it/is-it'
import { useAlike } from '@/app/_components/is-it/use-alike'
import type { AlikeHeadSeen } from '@/lib/use-cases/customers/see-alike'
import type { BookingActionForm } from './booking-action-form'

/** "Is it …?" for a customer or a head that is like one on record: yes takes that one, no is not asked again. */
export function AlikePart({ form }: { form: BookingActionForm }) {
  const [customer, heads] = useWatch({ control: form.form.control, name: ['customer', 'heads'] })
  const [not, setNot] = useState<readonly string[]>([])
  const { id, name, phone, email } = customer
  const seen = useAlike({
    customer: { id, name, phone, email },
    heads: heads.map(({ headId, stamp, tag }) => ({ headId, stamp, tag })),
  })
  const no = (other: string) => setNot((now) => [...now, other])
  const takeHead = (at: number, head: AlikeHeadSeen) => {
    const { headId, stamp, marks, castingId } = head
    const now = form.form.getValues(`heads.${at}`)
    form.form.setValue(
      `heads.${at}`,
      { ...now, headId, stamp, marks, castingId: castingId ?? '' },
      { shouldDirty: true },
    )
  }
  return (
    <>
      <IsItCustomer
        customers={seen.customers}
        not={not}
        onYes={({ id, name, phone, email, address }) =>
          form.form.setValue(
            'customer',
            { id, name, phone, email, address },
            { shouldDirty: true, shouldValidate: true },
          )
        }
        onNo={no}
      />
      {heads.map((_, at) => (
        <IsItHead
          // A head has no name of its own before it is booked: its place is what the answer is about.
          key={at}
          heads={seen.heads}
          at={at}
          not={not}
          onYes={(head) => takeHead(at, head)}
          onNo={no}
        />
      ))}
    </>
  )
}
