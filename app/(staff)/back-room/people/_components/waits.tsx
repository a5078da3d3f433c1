import type { WaitSeen } from '@/lib/use-cases/people/lift-waits'
import { wordsForLeft } from '@/lib/words/wait'
import { ActionButton } from '../../_components/action-button'
import { liftWaitsAction } from '../actions'

const where: Readonly<Record<WaitSeen['kind'], string>> = {
  here: 'At the address',
  address: 'At the address',
  name: 'In any browser they never signed in with',
  device: 'In a browser of theirs',
  factor: 'With the codes of their app',
  own: 'With their password, asked for again',
}

/** What this person's sign-in waits for, after wrong tries; nothing is shown while it waits for nothing. */
export function Waits({ personId, waits }: { personId: string; waits: readonly WaitSeen[] }) {
  if (waits.length === 0) return null
  return (
    <section className="part" aria-labelledby="waits">
      <h2 id="waits">Waits after wrong tries</h2>
      <p>
        Somebody typed wrong passwords for this name. The browsers that this person uses are not kept waiting by others’
        tries.
      </p>
      <ul>
        {waits.map(({ kind, place, wrong, waitMs }) => (
          <li key={`${kind} ${place}`}>
            {where[kind]}
            {place !== '' && ` ${place}`}: {wrong} wrong, {wordsForLeft(Math.ceil(waitMs / 1000))}.
          </li>
        ))}
      </ul>
      <ActionButton action={liftWaitsAction} input={{ personId }}>
        Lift the wait
      </ActionButton>
    </section>
  )
}
