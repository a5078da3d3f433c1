import Link from 'next/link'
import type { ReactNode } from 'react'
import { can } from '@/lib/core/access/can'
import { roleWords, type Actor } from '@/lib/core/access/roles'
import { ButtonLink } from '../ui/button-link'
import { FindBox } from './find-box'
import { places, type PlaceId } from './places'
import styles from './shell.module.css'

type Props = {
  /** Where the page belongs; left out on pages that belong to none of the five (a job, a head, help). */
  place?: PlaceId
  person: Actor
  /** The sign-out button, a form with its own action. */
  signOut?: ReactNode
  /** What was asked for, kept in the Find box on the results page. */
  find?: string
  /** Sizes for gloves and arm's length; on by itself at the stations. */
  floor?: 'desk' | 'station'
  children: ReactNode
}

/** The frame of every page behind the sign-in. The links it leaves out protect nothing: each page checks for itself. */
export function Shell({ place, person, signOut, find, floor, children }: Props) {
  const size = floor ?? (place === 'stations' ? 'station' : 'desk')
  return (
    <>
      <a href="#main" className={styles.skip}>
        Skip to the page
      </a>
      <header className={styles.bar}>
        <nav aria-label="Places" className={styles.places}>
          <ul>
            {places
              .filter(({ needs }) => can(person, needs))
              .map(({ id, label, href }) => (
                <li key={id}>
                  <Link href={href} prefetch={false} aria-current={id === place ? 'true' : undefined}>
                    {label}
                  </Link>
                </li>
              ))}
          </ul>
        </nav>
        <FindBox asked={find} />
        <div className={styles.person}>
          <span>
            {person.name}
            <span className={styles.roles}> {person.roles.map((role) => roleWords[role]).join(', ')}</span>
          </span>
          <ButtonLink href="/help" variant="quiet">
            Help
          </ButtonLink>
          {signOut}
        </div>
      </header>
      <main id="main" tabIndex={-1} data-floor={size} className={styles.main}>
        {children}
      </main>
    </>
  )
}
