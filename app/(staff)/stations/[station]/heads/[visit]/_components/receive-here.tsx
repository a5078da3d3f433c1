'use client'
import dynamic from 'next/dynamic'
import { untilHere } from '@/app/_components/ui/until-here'
import { nothingYet } from '@/app/_components/ui/nothing-yet'
import { Link } from '@/app/_components/ui/link'
import { Notice } from '@/app/_components/ui/notice'
import type { ReceiveProps } from './receive-form'

/** Few steps show it. */
const ReceiveForm = dynamic(() => untilHere(() => import('./receive-form').then((file) => file.ReceiveForm)), {
  loading: nothingYet,
})

/** The arrival check of a head that is still out: whoever has it in hand receives it here and goes on checking. */
export function ReceiveHere(props: ReceiveProps) {
  const { orderId, number, vendor } = props.receive
  return (
    <Notice title={`Back from ${vendor}?`} live={false}>
      <p>
        Order <Link href={`/away/${orderId}`}>{number}</Link>: receive {props.tag} here, then check it.
      </p>
      <ReceiveForm {...props} />
    </Notice>
  )
}
