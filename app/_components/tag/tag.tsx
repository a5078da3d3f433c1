import { Link } from '@/app/_components/ui/link'
import { isTag } from '@/lib/core/shop/tag-number'
import styles from './tag.module.css'

type Props = {
  /** "T-0412", or the shop's own number as typed at booking; a name with a space in it is of a head without a tag. */
  number: string
  size?: 's' | 'm' | 'l'
  /** Makes the tag the link to its head. */
  href?: string
}

/** A head's brass tag: a plate, one hole, the number. The only brass in the app. */
export function Tag({ number, size = 'm', href }: Props) {
  const plate = isTag(number) ? (
    <span className={`${styles.tag} ${styles[size]}`}>
      <span className={styles.hole} aria-hidden="true" />
      <span className="visually-hidden">tag </span>
      <span>{number}</span>
    </span>
  ) : (
    <span className={styles.none}>{number === '' ? 'no tag yet' : `no tag yet, ${number}`}</span>
  )
  if (!href) return plate
  return (
    <Link href={href} className={styles.link}>
      {plate}
    </Link>
  )
}
