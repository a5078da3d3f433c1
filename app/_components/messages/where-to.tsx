import { Link } from '@/app/_components/ui/link'
import type { WritingView } from './written'

/** Who it goes to; what is missing of their address, and where to add it. */
export function WhereTo({ view: { customer, customerId, hasMail, localHost } }: { view: WritingView }) {
  return (
    <>
      <p>
        To {customer.name}: {hasMail ? customer.email : 'no mail address'},{' '}
        {customer.phone === '' ? 'no phone number' : customer.phone}.{' '}
        {(!hasMail || customer.phone === '') && (
          <Link href={`/customers/${customerId}/change`}>Add what is missing</Link>
        )}
      </p>
      {localHost !== '' && (
        <p className="soft">
          Customers cannot open the link yet: the shop’s address is {localHost}, which is this machine alone. Set
          BRASSTAG_URL (see the README).
        </p>
      )}
    </>
  )
}
