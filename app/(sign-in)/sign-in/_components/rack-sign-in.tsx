'use client'
import { useRouter } from 'next/navigation'
import { useEffect, useState, type MouseEvent } from 'react'
import { ButtonLink } from '@/app/_components/ui/button-link'
import type { Rack, RackCard } from '@/lib/use-cases/tablets/see-rack'
import { PinEntry } from './pin-entry'
import styles from './rack.module.css'

/** A rack that stands there all day still shows who is new, and the owner when the tablet was last seen. */
const refreshEveryMs = 5 * 60_000

type Props = {
  rack: Rack
  /** Where a page or a scanned tag wanted to go. */
  next: string
  /** The card that was taken before this page could answer. */
  taken: string | null
}

/** The rack of time cards: who is it, then their PIN. */
export function RackSignIn({ rack, next, taken }: Props) {
  const [chosen, setChosen] = useState<RackCard | null>(
    () => rack.cards.find(({ personId, hasPin }) => hasPin && personId === taken) ?? null,
  )
  const router = useRouter()
  useEffect(() => {
    const timer = setInterval(() => router.refresh(), refreshEveryMs)
    return () => clearInterval(timer)
  }, [router])
  const goTo = next === '/' ? `/stations/${rack.station}` : next
  return (
    <div className={styles.screen} data-floor="station">
      <header className={styles.bar}>
        <p>
          <strong>{rack.stationName}</strong> <span className={styles.tablet}>{rack.tabletName}</span>
        </p>
        <ButtonLink href={byPassword(next)} variant="quiet">
          Sign in with a password instead
        </ButtonLink>
      </header>
      <main id="main" className={styles.main}>
        {chosen ? (
          <PinEntry card={chosen} goTo={goTo} onBack={() => setChosen(null)} />
        ) : (
          <>
            <h1>Take your time card</h1>
            <ul className={styles.rack}>
              {rack.cards.map((card) => (
                <li key={card.personId} className={styles.slot}>
                  <TimeCard card={card} next={next} onTake={() => setChosen(card)} />
                </li>
              ))}
            </ul>
            {rack.cards.length === 0 && <p>Nobody here works at the stations yet. The owner adds people.</p>}
          </>
        )}
      </main>
    </div>
  )
}

const byPassword = (next: string): string => `/sign-in?by=password&next=${encodeURIComponent(next)}`

const byCard = (personId: string, next: string): string => `/sign-in?${new URLSearchParams({ card: personId, next })}`

/** A link, so that a tap counts before the page's script has come. */
function TimeCard({ card, next, onTake }: { card: RackCard; next: string; onTake: () => void }) {
  function take(event: MouseEvent) {
    event.preventDefault()
    onTake()
  }
  if (!card.hasPin) {
    return (
      <a href={byPassword('/account')} className={styles.card}>
        <span className={styles.name}>{card.name}</span>
        <span className={styles.note}>No PIN yet. Set one with your password.</span>
      </a>
    )
  }
  return (
    <a href={byCard(card.personId, next)} className={styles.card} onClick={take}>
      <span className={styles.name}>{card.name}</span>
    </a>
  )
}
