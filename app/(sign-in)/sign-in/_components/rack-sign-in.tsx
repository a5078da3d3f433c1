'use client'
import { useRouter } from 'next/navigation'
import { useEffect, useState } from 'react'
import { ButtonLink } from '@/app/_components/ui/button-link'
import type { Rack, RackCard } from '@/lib/use-cases/tablets/see-rack'
import { PinEntry } from './pin-entry'
import styles from './rack.module.css'

/** A rack that stands there all day still shows who is new, and the owner when the tablet was last seen. */
const refreshEveryMs = 5 * 60_000

/** The rack of time cards: who is it, then their PIN. `next`: where a page or a scanned tag wanted to go. */
export function RackSignIn({ rack, next }: { rack: Rack; next: string }) {
  const [chosen, setChosen] = useState<RackCard | null>(null)
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
                  <TimeCard card={card} onTake={() => setChosen(card)} />
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

function TimeCard({ card, onTake }: { card: RackCard; onTake: () => void }) {
  if (card.hasPin) {
    return (
      <button type="button" className={styles.card} onClick={onTake}>
        <span className={styles.name}>{card.name}</span>
      </button>
    )
  }
  return (
    <a href={byPassword('/account')} className={styles.card}>
      <span className={styles.name}>{card.name}</span>
      <span className={styles.note}>No PIN yet. Set one with your password.</span>
    </a>
  )
}
