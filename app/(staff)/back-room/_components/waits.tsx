import { Link } from '@/app/_components/ui/link'
import { Table } from '@/app/_components/ui/table'
import type { StationLoad } from '@/lib/use-cases/back-room/see-back-room'

const hourMs = 60 * 60 * 1000

/** "40 min", "5 h", "3 days": time since the last work on it. */
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
      <h2 id="waits">Waiting at stations</h2>
      <Table
        label="Stations with work"
        columns={[
          { id: 'station', label: 'Station', head: true },
          { id: 'ready', label: 'Ready', figure: true },
          { id: 'started', label: 'Started', figure: true },
          { id: 'longest', label: 'Waiting longest' },
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
        empty={<p className="soft">No head is waiting at a station.</p>}
      />
    </section>
  )
}
