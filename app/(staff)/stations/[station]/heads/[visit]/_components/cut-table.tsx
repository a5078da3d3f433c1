import { Sign } from '@/app/_components/ui/sign'
import { Table } from '@/app/_components/ui/table'
import type { StepId } from '@/lib/core/route/step-ids'
import { capital } from '@/lib/core/route/words'
import type { CutAtStep, CutRow } from '@/lib/use-cases/stations/cut-at-step'
import { MarksMeant } from './marks-meant'
import { NotAsWanted } from './not-as-wanted'
import styles from './step.module.css'

const wide = (text: string) => <span className={styles.wide}>{text}</span>

const columnsOf = (hasMarks: boolean) => [
  { id: 'part', label: 'Part', head: true },
  { id: 'wanted', label: wide('Wanted'), figure: true },
  ...(hasMarks ? [{ id: 'marked', label: wide('Marked'), figure: true }] : []),
  { id: 'measured', label: 'Measured', figure: true },
  { id: 'difference', label: 'Difference' },
]

/** On a telephone what was wanted and marked stands under what was measured: nothing is out of sight to the side. */
const rowOf = ({ id, part, wanted, marked, measured, differences }: CutRow) => ({
  id,
  cells: {
    part,
    wanted: wide(wanted),
    marked: wide(marked),
    measured: (
      <>
        {measured}
        {wanted !== '' && <span className={styles.narrow}>wanted {wanted}</span>}
        {marked !== '' && <span className={styles.narrow}>marked {marked}</span>}
      </>
    ),
    difference: differences.map(({ words, within }) => (
      <span key={words} className={within ? styles.difference : styles.out}>
        {!within && <Sign kind="caution" />} {words}
      </span>
    )),
  },
})

type Props = { cut: CutAtStep; visitId: string; stepId: StepId }

/** What was really cut, part by part, beside what was wanted and what its maker marked on it. */
export function CutTable({ cut, visitId, stepId }: Props) {
  return (
    <>
      <Table label={cut.title} caption columns={columnsOf(cut.hasMarks)} rows={cut.rows.map(rowOf)} />
      {cut.note !== '' && <p>{capital(cut.note)}.</p>}
      {cut.marksAsTyped !== '' && (
        <p>Marked “{cut.marksAsTyped}”, which does not read as flat part and angle part: compare it by eye.</p>
      )}
      {cut.marksTwoWays !== null && cut.orderId !== null && (
        <MarksMeant marks={cut.marksTwoWays} visitId={visitId} orderId={cut.orderId} />
      )}
      {cut.out !== '' && <NotAsWanted visitId={visitId} stepId={stepId} words={cut.out} orderId={cut.orderId} />}
    </>
  )
}
