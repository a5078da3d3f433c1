import Link from 'next/link'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { Table } from '@/app/_components/ui/table'
import type { StationLoad } from '@/lib/use-cases/back-room/see-back-room'

const hourMs = 60 * 60 * 1000

/** "40 min", "5 h", "3 days": how long nothing has been done, as one would say it. */
function waited(since: Date, now: Date): string {
  const hours = (now.getTime() - since.getTime()) / hourMs
  if (hours < 1) return `${Math.max(0, Math.floor(hours * 60))} min`
  if (hours < 48) return `${Math.floor(hours)} h`
  return `${Math.floor(hours / 24)} days`
}

export function Waits({ loads, now }: { loads: readonly StationLoad[]; now: Date }) {
  const busy = loads.filter(({ ready, started }) => ready + started > 0)
  return (
    <section className="part" aria-labelledby="waits">
      <h2 id="waits">What waits where</h2>
      <Table
        label="Stations with work"
        columns={[
          { id: 'station', label: 'Station', head: true },
          { id: 'ready', label: 'Ready', figure: true },
          { id: 'started', label: 'Started', figure: true },
          { id: 'longest', label: 'Longest untouched' },
        ]}
        rows={busy.map(({ station, label, ready, started, longest }) => ({
          id: station,
          cells: {
            station: <Link href={`/stations/${station}`}>{label}</Link>,
            ready,
            started,
            longest: longest && (
              <span>
                <Link href={`/t/${encodeURIComponent(longest.tag)}`}>{longest.tag}</Link>, {longest.label}:{' '}
                <span className="nowrap">{waited(longest.since, now)}</span>
              </span>
            ),
          },
        }))}
        empty={
          <EmptyState title="Nothing waits at any station">
            <p>Heads stand here once they are checked in and somebody could work on them.</p>
          </EmptyState>
        }
      />
    </section>
  )
}
