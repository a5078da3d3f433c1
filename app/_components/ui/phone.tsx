import { phoneLink } from '@/lib/web/phone-link'

/**
 * A telephone number as it was typed, as a link that dials the number in it and nothing else. On the server only: numbers
 * are read there, so that no page carries the tables of all countries.
 */
export async function Phone({ number }: { number: string }) {
  if (number === '') return <span className="soft">no phone number</span>
  const href = await phoneLink(number)
  if (href === null) return <span>{number}</span>
  return (
    <a href={href} className="nowrap">
      {number}
    </a>
  )
}
