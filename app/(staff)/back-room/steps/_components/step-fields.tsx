'use client'
import { CheckList } from '@/app/_components/ui/choice'
import { Select } from '@/app/_components/ui/select'
import { TextArea } from '@/app/_components/ui/text-area'
import { TextInput } from '@/app/_components/ui/text-input'
import { causes, causeWords } from '@/lib/core/route/do-again'
import type { StepRef } from '@/lib/core/route/keys'
import type { RouteRules } from '@/lib/core/route/rules'
import { cellWords, columnNames, stationName } from '@/lib/core/route/rules-words'
import type { Cell, Cells } from '@/lib/core/route/cells'
import { isLess } from '@/lib/core/route/floors'
import { tableOf } from '@/lib/core/route/table'
import { capital } from '@/lib/core/route/words'
import { stations } from '@/lib/core/route/step-ids'
import fields from '../../_components/fields.module.css'

/** Names of fields that the form of a stock step and that of an own one share. */
export type SharedField = 'label' | 'station' | `cells.${0 | 1 | 2 | 3}` | 'waitsFor' | 'undoneBy' | 'reason'

type Props<Control extends { name: string }> = { text: (name: SharedField) => Control; rules: RouteRules }

export const stepOptions = (rules: RouteRules, without: StepRef | null) =>
  tableOf(rules)
    .rows.filter(({ ref, own }) => ref !== without && !own?.retired)
    .map(({ ref, label }) => ({ value: ref, label }))

const words: Readonly<Record<string, string>> = {
  label: 'Name',
  station: 'Station',
  waitsFor: 'Waiting for',
  undoneBy: 'Redo after',
  reason: 'Reason',
  after: 'Comes after',
  when: 'Condition',
  limit: 'More than',
  owes: 'Readings needed',
  machining: 'Makes chips or dust',
  retired: 'No longer used',
}
/** What a field is called, for showing both sides of a conflict. */
export const labelOf = (path: string): string => {
  const [field = '', place] = path.split('.')
  return field === 'cells' ? capital(columnNames[Number(place)] ?? '') : (words[field] ?? field)
}

export function NameAndStation<Control extends { name: string }>({ text, rules }: Props<Control>) {
  return (
    <div className={fields.grid}>
      <TextInput label="Name" required autoComplete="off" {...text('label')} />
      <Select
        label="Station"
        hint="The queue it waits in."
        options={stations.map((id) => ({ value: id, label: stationName(id, rules) }))}
        {...text('station')}
      />
    </div>
  )
}

type CellProps<Control extends { name: string }> = Pick<Props<Control>, 'text'> & {
  cells: readonly Cell[]
  /** What each column cannot go under; left out: nothing. */
  least?: Cells
}

/** When it comes, for each kind of cut. */
export function CellFields<Control extends { name: string }>({ text, cells, least }: CellProps<Control>) {
  const optionsAt = (place: 0 | 1 | 2 | 3) =>
    cells
      .filter((cell) => !least || !isLess(cell, least[place]))
      .map((cell) => ({ value: cell, label: cellWords[cell] }))
  return (
    <fieldset className="stack">
      <legend>When a head needs it</legend>
      <div className={fields.grid}>
        {([0, 1, 2, 3] as const).map((place) => (
          <Select
            key={place}
            label={capital(columnNames[place])}
            options={optionsAt(place)}
            {...text(`cells.${place}`)}
          />
        ))}
      </div>
    </fieldset>
  )
}

type OrderProps<Control extends { name: string }> = Props<Control> & {
  own: StepRef | null
  open: { waitsFor: boolean; undoneBy: boolean }
}

/** Order and doing again: long lists, folded away until one is used. */
export function OrderFields<Control extends { name: string }>({ text, rules, own, open }: OrderProps<Control>) {
  return (
    <>
      <details open={open.waitsFor}>
        <summary>What must come first</summary>
        <CheckList
          label="Waiting for"
          hint="In addition to the built-in order, which cannot be changed."
          options={stepOptions(rules, own).filter(({ value }) => value !== 'final' && value !== 'hand-over')}
          {...text('waitsFor')}
        />
      </details>
      <details open={open.undoneBy}>
        <summary>What triggers a redo</summary>
        <CheckList
          label="Redo after"
          hint="In addition to the built-in triggers."
          options={causes.map((cause) => ({ value: cause, label: capital(causeWords[cause]) }))}
          {...text('undoneBy')}
        />
      </details>
    </>
  )
}

export function Reason<Control extends { name: string }>({ text }: { text: (name: 'reason') => Control }) {
  return (
    <TextArea
      label="Reason"
      hint="Kept in the history of the steps. Needed when work is taken away."
      required={false}
      rows={2}
      {...text('reason')}
    />
  )
}
