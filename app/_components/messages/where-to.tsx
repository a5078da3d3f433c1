import type { WritingView } from './written'

/** Who it goes to, and what is missing of their address. */
export function WhereTo({ view: { customer, hasMail, localHost } }: { view: WritingView }) {
  return (
    <>
      <p>
        To {customer.name}: {hasMail ? customer.email : 'no mail address'},{' '}
        {customer.phone === '' ? 'no phone number' : customer.phone}.
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
