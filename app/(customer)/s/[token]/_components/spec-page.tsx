import { Marks } from '@/app/_components/charts/marks-svg'
import { DefinitionList } from '@/app/_components/ui/definition-list'
import { Notice } from '@/app/_components/ui/notice'
import { Table } from '@/app/_components/ui/table'
import type { SpecChambers, SpecEarlier, SpecSheetData } from '@/lib/core/spec/spec-sheet'
import { chamberBars, chamberBarsWidth } from '@/lib/drawing/chamber-bars'
import { headPlan } from '@/lib/drawing/head-plan'
import { headSection } from '@/lib/drawing/head-section'
import { Flow } from './flow'
import { Valves } from './valves'
import styles from './spec.module.css'

/** The spec sheet as a page: everything that the paper says, for a screen and for a screen reader. */
export function SpecPage({ spec }: { spec: SpecSheetData }) {
  return (
    <div className={`stack-large ${styles.sheet}`}>
      <p>
        {spec.outcome === 'released' ? 'Released' : 'Returned as is'} by {spec.releasedBy}, {spec.releasedAt}
        {spec.revision > 1 && `, revision ${spec.revision}: ${spec.revisionReason}`}.
      </p>
      <DefinitionList items={aboutHead(spec)} />
      {spec.headline.length > 0 && <DefinitionList large items={spec.headline.map((figure) => ({ ...figure }))} />}
      <Cautions spec={spec} />
      <Lines title="Asked" lines={spec.asked} />
      <Lines title="Done" lines={spec.done} />
      <Lines title="Not done" lines={spec.notDone} />
      <Marks drawing={headPlan(spec.drawing)} className={styles.drawing} />
      {spec.drawing.cutKind !== 'none' && <Marks drawing={headSection(spec.drawing)} className={styles.section} />}
      {spec.chambers && <Chambers chambers={spec.chambers} />}
      <Cuts spec={spec} />
      <Compression spec={spec} />
      {spec.valves && <Valves valves={spec.valves} />}
      {spec.groups.map(({ title, lines }) => (
        <section key={title} aria-label={title}>
          <h3>{title}</h3>
          <DefinitionList
            items={lines.map(({ label, value, wanted }) => ({
              label,
              value,
              note: wanted && `${wanted.label} ${wanted.value}`,
            }))}
          />
        </section>
      ))}
      {spec.flow.map((run) => (
        <Flow key={run.port} run={run} />
      ))}
      <Lines
        title="Waived"
        lines={spec.waivers.map(({ what, reason, by, at }) => `${what}: ${reason} (${by}, ${at})`)}
      />
      <Lines title="Declined" lines={spec.declined.map(({ what, how }) => (how === '' ? what : `${what}, ${how}`))} />
      <Lines title="Notes" lines={spec.notes} />
      <Lines title="Earlier sheets of this head, kept" lines={(spec.earlier ?? []).map(earlierWords)} />
    </div>
  )
}

const earlierWords = ({ revision, reason, releasedBy, releasedAt }: SpecEarlier): string =>
  `Revision ${revision}${reason === '' ? '' : ` (${reason})`}, released by ${releasedBy}, ${releasedAt}`

const aboutHead = (spec: SpecSheetData) =>
  [
    { label: 'Engine', value: spec.engine },
    { label: 'Casting', value: spec.casting },
    { label: 'Marks', value: spec.marks },
    { label: 'Bank or side', value: spec.side ?? 'side not given' },
    { label: 'Pair with', value: spec.pairTags.join(', ') },
  ].filter(({ value }) => value !== '')

function Cautions({ spec }: { spec: SpecSheetData }) {
  if (spec.cautions.length === 0) return null
  return (
    <Notice kind="caution" live={false} title="Before it goes on the engine">
      <ul>
        {spec.cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </Notice>
  )
}

function Lines({ title, lines }: { title: string; lines: readonly string[] }) {
  if (lines.length === 0) return null
  return (
    <section aria-label={title}>
      <h3>{title}</h3>
      <ul>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </section>
  )
}

const orDash = (value: string | null): string => value ?? '–'

function Chambers({ chambers }: { chambers: SpecChambers }) {
  const mean = {
    chamber: 'mean',
    before: orDash(chambers.meanBeforeCc),
    after: orDash(chambers.meanAfterCc),
    remark: '',
  }
  const spread = {
    chamber: 'spread',
    before: orDash(chambers.spreadBeforeCc),
    after: orDash(chambers.spreadAfterCc),
    remark: '',
  }
  const rows = chambers.rows.map(({ chamber, beforeCc, afterCc, remark }) => ({
    chamber,
    before: orDash(beforeCc),
    after: orDash(afterCc),
    remark,
  }))
  return (
    <section className="stack" aria-label="Chambers">
      <h3>Chambers, cc</h3>
      {chambers.picture && (
        <Marks
          drawing={chamberBars(chambers, { widthMm: chamberBarsWidth(chambers, 110), heightMm: 48 })}
          className={styles.drawing}
        />
      )}
      <Table
        label="Chambers, cc, counted from the marked end"
        columns={[
          { id: 'chamber', label: 'Chamber', head: true },
          { id: 'before', label: 'Before', figure: true },
          { id: 'after', label: 'After', figure: true },
          { id: 'remark', label: 'Remark' },
        ]}
        rows={[...rows, mean, spread].map((cells) => ({ id: cells.chamber, cells }))}
      />
      <DefinitionList
        items={[
          { label: 'Target', value: chambers.target ?? '' },
          { label: 'Measured before with', value: chambers.beforeWith },
          { label: 'Measured after with', value: chambers.afterWith },
        ].filter(({ value }) => value !== '')}
      />
    </section>
  )
}

function Cuts({ spec }: { spec: SpecSheetData }) {
  return (
    <section className="stack" aria-label="Cuts">
      <h3>Cuts</h3>
      <Table
        label="Cuts"
        columns={[
          { id: 'what', label: 'Cut', head: true },
          { id: 'planned', label: 'Planned' },
          { id: 'measured', label: 'As measured' },
          { id: 'how', label: 'Measured how' },
          { id: 'by', label: 'Where' },
        ]}
        rows={spec.cuts.map(({ what, planned, measured, how, by }) => ({
          id: what,
          cells: { what, planned: orDash(planned), measured: measured ?? 'not measured', how, by },
        }))}
        empty={<p>The deck was not cut.</p>}
      />
      <p>Removed since new: {spec.removedSinceNew}</p>
      {spec.cutterMarks !== '' && <p>{spec.cutterMarks}</p>}
    </section>
  )
}

function Compression({ spec: { compression } }: { spec: SpecSheetData }) {
  if (!compression) return null
  const items = [
    { label: 'Before', value: compression.before ?? '' },
    { label: 'After', value: compression.after ?? '' },
    { label: 'Not computed', value: compression.needs },
  ]
  return (
    <section aria-label="Compression ratio">
      <h3>Compression ratio</h3>
      <DefinitionList items={items.filter(({ value }) => value !== '')} />
    </section>
  )
}
