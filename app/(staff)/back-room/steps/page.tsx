import { Link } from '@/app/_components/ui/link'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { Table, type Column } from '@/app/_components/ui/table'
import type { RouteRules } from '@/lib/core/route/rules'
import { cellWords, columnNames, stationName } from '@/lib/core/route/rules-words'
import { tableOf, type ShopRow } from '@/lib/core/route/table'
import { stations } from '@/lib/core/route/step-ids'
import { seeRules } from '@/lib/use-cases/rules/see-rules'
import { requirePerson } from '@/lib/web/require-actor'
import { PageHead } from '../_components/page-head'
import { Behind } from './_components/behind'

export const metadata = { title: 'Steps and stations' }

const columns: readonly Column[] = [
  { id: 'step', label: 'Step', head: true },
  { id: 'station', label: 'Station' },
  ...columnNames.map((name) => ({ id: name, label: name })),
]

export default async function StepsPage() {
  const actor = await requirePerson('settings.change')
  const { rules, behind } = await seeRules(actor)
  const { rows } = tableOf(rules)
  const retired = rows.filter(({ own }) => own?.retired)
  return (
    <>
      <PageHead
        up={['/back-room', 'Back room']}
        title="Steps and stations"
        action={
          <div className="row">
            <ButtonLink href="/back-room/steps/new" variant="main">
              Add a step
            </ButtonLink>
            <ButtonLink href="/back-room/steps/new?outside=1">Add an outside service</ButtonLink>
          </div>
        }
      >
        <p className="soft">
          The steps of a job in working order, and when each is needed. A change applies to heads booked from now on.
          The figures in conditions are <Link href="/back-room/settings">limits and tolerances</Link>.
        </p>
        <Behind count={behind} />
      </PageHead>
      <section className="part">
        <h2>Steps</h2>
        <Table
          label="Steps in working order"
          columns={columns}
          rows={rows.filter(({ own }) => !own?.retired).map((row) => cellsOf(row, rules))}
        />
      </section>
      {retired.length > 0 && (
        <section className="part">
          <h2>No longer used</h2>
          <ul className="plain-list">
            {retired.map(({ ref, label }) => (
              <li key={ref}>
                <Link href={`/back-room/steps/${ref}`}>{label}</Link>
              </li>
            ))}
          </ul>
        </section>
      )}
      <section className="part">
        <div className="row spread">
          <h2>Stations</h2>
          <ButtonLink href="/back-room/steps/stations">Rename stations</ButtonLink>
        </div>
        <ul className="plain-list">
          {stations.map((station) => (
            <li key={station}>{stationName(station, rules)}</li>
          ))}
        </ul>
      </section>
    </>
  )
}

const cellsOf = ({ ref, label, station, cells, own }: ShopRow, rules: RouteRules) => ({
  id: ref,
  cells: {
    step: (
      <>
        <Link href={`/back-room/steps/${ref}`}>{label}</Link>
        {(own ?? rules.changed[ref]) && (
          <span className="soft"> ({own ? 'added by the shop' : 'changed by the shop'})</span>
        )}
      </>
    ),
    station: stationName(station, rules),
    ...Object.fromEntries(columnNames.map((name, place) => [name, cellWords[cells[place] ?? '–']])),
  },
})
