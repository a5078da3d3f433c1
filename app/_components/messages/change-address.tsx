import { Link } from '@/app/_components/ui/link'

/** To the page where a customer's mail address is put right. */
export const ChangeAddress = ({ customerId, of }: { customerId: string; of: string }) => (
  <Link href={`/customers/${customerId}/change`}>
    Change the address<span className="visually-hidden"> of {of}</span>
  </Link>
)
