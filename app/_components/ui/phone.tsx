import { phoneLink } from '@/lib/web/phone-link'
import { PhoneLink } from './phone-link'

/**
 * A telephone number as it was typed, as a link that dials the number in it and nothing else. On the server only: numbers
 * are read there, so that no page carries the tables of all countries.
 */
export async function Phone({ number }: { number: string }) {
  return <PhoneLink number={number} dial={await phoneLink(number)} />
}
