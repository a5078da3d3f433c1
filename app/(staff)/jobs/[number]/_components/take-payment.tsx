'use client'
import dynamic from 'next/dynamic'
import { untilHere } from '@/app/_components/ui/until-here'
import { useState } from 'react'
import { Notice } from '@/app/_components/ui/notice'
import { FormInFold } from './later-form'
import { moneyPaperHref } from './papers'
import type { PaymentProps, Receipt } from './take-payment-form'

/** Drawn by the server: what comes next stands open. */
const OpenForm = dynamic(() => untilHere(() => import('./take-payment-form').then((file) => file.TakePaymentForm)))

/** `isNext`: it is what comes next. */
export function TakePayment({ isNext, ...of }: PaymentProps & { isNext: boolean }) {
  const [taken, setTaken] = useState<Receipt | null>(null)
  return (
    <>
      {taken && (
        <Notice title={`Receipt ${taken.receipt}`}>
          <a href={moneyPaperHref(taken.receiptId)} target="_blank" rel="noreferrer">
            Print receipt {taken.receipt}
          </a>
        </Notice>
      )}
      {isNext ? (
        <details open>
          <summary>Take a payment</summary>
          <OpenForm {...of} onTaken={setTaken} />
        </details>
      ) : (
        <FormInFold summary="Take a payment">
          {(forms) => <forms.TakePaymentForm {...of} onTaken={setTaken} />}
        </FormInFold>
      )}
    </>
  )
}
