import { Link } from '@/app/_components/ui/link'
import type { ReactNode } from 'react'
import { can } from '@/lib/core/access/can'
import { roleWords, type Actor } from '@/lib/core/access/roles'
import { SignOut } from '../sign-out'
import { ButtonLink } from '../ui/button-link'
import { AtTablet } from './at-tablet'
import { FindBox } from './find-box'
import { FollowLinks } from './follow-links'
import { PlaceLinks } from './place-links'
import { places } from './places'
import styles from './shell.module.css'
import { SwitchPerson } from './switch-person'
import { TabletWatch } from './tablet-watch-later'

type Props = {
  actor: Actor
  /** Null: this device is no enrolled tablet. */
  tablet: { readonly idleMs: number } | null
  children: ReactNode
}

/** The frame of every page behind the sign-in. The links it leaves out protect nothing: each page checks for itself. */
export function StaffShell({ actor, tablet, children }: Props) {
  return (
    <>
      <a href="#main" className={styles.skip}>
        Skip to the page
      </a>
      <header className={styles.bar}>
        <nav aria-label="Places" className={styles.places}>
          <PlaceLinks allowed={places.filter(({ needs }) => can(actor, needs)).map(({ id }) => id)} />
        </nav>
        <FindBox />
        <div className={styles.person}>
          <span>
            <Link href="/account">{actor.name}</Link>
            <span className={styles.roles}> {actor.roles.map((role) => roleWords[role]).join(', ')}</span>
          </span>
          <ButtonLink href="/help" variant="quiet">
            Help
          </ButtonLink>
          {tablet ? <SwitchPerson /> : <SignOut />}
        </div>
      </header>
      {/* Whose drafts the forms below keep: `form/draft-store.ts`. */}
      <main id="main" tabIndex={-1} className={styles.main} data-person={actor.personId}>
        <AtTablet name={tablet && actor.name}>{children}</AtTablet>
      </main>
      <FollowLinks />
      {tablet && <TabletWatch idleMs={tablet.idleMs} name={actor.name} />}
    </>
  )
}
