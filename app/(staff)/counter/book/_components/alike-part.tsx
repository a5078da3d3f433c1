'use client'
import type { ReactNode } from 'react'
import { IsItCustomer, IsItHead } from '@/app/_components/is-it/is-it'
import { Notice } from '@/app/_components/ui/notice'
import type { BookingActionForm } from './booking-action-form'
import { CustomerPart } from './customer-part'
import { useQuestions } from './use-questions'

type Props = {
  form: BookingActionForm
  /** What else stands in the customer's row. */
  children: ReactNode
}

/**
 * The customer, and "Is it …?" for a customer or a head that is like one on record. A booking that was refused for want of
 * an answer says so here.
 */
export function AlikePart({ form, children }: Props) {
  const { box, customers, heads, refused, ...answer } = useQuestions(form)
  return (
    <>
      <CustomerPart form={form} isAsked={customers.length > 0}>
        {children}
      </CustomerPart>
      {(refused || customers.length + heads.length > 0) && (
        <div ref={box} tabIndex={-1} role="group" aria-label="Is it on record?" className="stack">
          {refused && (
            <Notice kind="stop" title="Not booked yet" ref={form.refusalRef}>
              <p>{refused.message}</p>
            </Notice>
          )}
          <IsItCustomer customers={customers} onYes={answer.takeCustomer} onNo={answer.notCustomer} />
          {[...new Set(heads.map(({ at }) => at))].map((at) => (
            <IsItHead key={at} heads={heads} at={at} onYes={answer.takeHead} onNo={answer.notHead} />
          ))}
        </div>
      )}
    </>
  )
}
