import { Marks } from '@/app/_components/charts/marks-svg'
import { Table } from '@/app/_components/ui/table'
import { capital } from '@/lib/core/route/words'
import { flowRunCurves } from '@/lib/drawing/flow-curves'
import type { Held, HeldRow, PortComparison } from '@/lib/use-cases/flow/compare-runs'
import styles from './flow.module.css'

const size = { widthMm: 100, heightMm: 62 }

/** One port: all chosen runs in one picture, then each held against the first. */
export function PortRuns({ port }: { port: PortComparison }) {
  return (
    <section className="stack part" aria-label={port.title}>
      <h2>{port.title}</h2>
      <figure className="stack">
        <Marks
          drawing={flowRunCurves(port.drawn, { title: `Flow, ${port.title.toLowerCase()}`, ...size })}
          className={styles.drawing}
        />
        <figcaption className="soft">{port.drawnAt}</figcaption>
      </figure>
      {port.held.length === 0 && <p>Only one of the chosen runs has this port: choose another to hold it against.</p>}
      {port.held.map((held) => (
        <HeldRuns key={held.id} held={held} port={port.title} />
      ))}
      <details>
        <summary>How each was run</summary>
        <ul className="plain-list">
          {port.conditions.map(({ name, words }) => (
            <li key={name}>
              {name}: {words === '' ? 'nothing noted' : words}
            </li>
          ))}
        </ul>
      </details>
    </section>
  )
}

function HeldRuns({ held, port }: { held: Held; port: string }) {
  return (
    <div className="stack">
      <h3>
        {held.differentHead && 'Different head: '}
        {held.title}
      </h3>
      {held.refused !== '' && <p>{held.refused}</p>}
      {held.differs.length > 0 && (
        <p>
          <strong>Not like for like, so neither a gain nor a loss:</strong> {held.differs.join('; ')}.
        </p>
      )}
      {held.remarks.map((remark) => (
        <p key={remark}>{remark}, by the square root of the pressures.</p>
      ))}
      {held.rows.length > 0 && (
        <Table
          label={`${port}, ${held.title}`}
          columns={[
            { id: 'lift', label: 'Lift', head: true },
            { id: 'before', label: `${capital(held.beforeName)}, cfm`, figure: true },
            { id: 'after', label: `${capital(held.afterName)}, cfm`, figure: true },
            { id: 'diff', label: 'Difference, cfm', figure: true },
            { id: 'percent', label: '%', figure: true },
            { id: 'note', label: 'Note' },
          ]}
          rows={[...held.rows, ...held.means].map(rowOf)}
        />
      )}
    </div>
  )
}

const rowOf = ({ id, lift, before, after, diffCfm, diffPercent, note }: HeldRow) => ({
  id,
  cells: {
    lift,
    before: before ?? '–',
    after: after ?? '–',
    diff: diffCfm ?? '–',
    percent: diffPercent ?? '–',
    note,
  },
})
