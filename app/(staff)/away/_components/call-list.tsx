import { Link } from '@/app/_components/ui/link'
import { Tag } from '@/app/_components/tag/tag'
import { Phone } from '@/app/_components/ui/phone'
import type { Call } from '@/lib/use-cases/outside/away-calls'

/** Whom to telephone today about what is out, and why. */
export function CallList({ calls }: { calls: readonly Call[] }) {
  if (calls.length === 0) return null
  return (
    <section className="stack part" aria-label="Call today">
      <h2>Call today</h2>
      <ul className="plain-list">
        {calls.map((call) => (
          <li key={call.id} className="row spread">
            <span>
              <strong>{call.name}</strong>
              {call.who === 'customer' && ', customer'}: {call.reasons.join(', ')} (
              <Link href={`/away/${call.orderId}`}>{call.number}</Link>)
            </span>
            <span className="row">
              {call.heads.map((head) => (
                <Tag key={head.visitId} number={head.tag} size="s" href={`/heads/${head.headId}`} />
              ))}
            </span>
            {call.phone !== undefined && <Phone number={call.phone} />}
          </li>
        ))}
      </ul>
    </section>
  )
}
