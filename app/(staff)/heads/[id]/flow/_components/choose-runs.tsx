import { Button } from '@/app/_components/ui/button'
import { CheckList } from '@/app/_components/ui/choice'
import { Select } from '@/app/_components/ui/select'
import { When } from '@/app/_components/ui/when'
import type { FlowView, RunLine } from '@/lib/use-cases/flow/see-flow'
import type { ShopLocale } from '@/lib/use-cases/shop/shop-locale'

type Props = { view: FlowView; manner: ShopLocale }

const whose = [
  ['own', 'Runs of this head'],
  ['mate', 'Runs of its mate'],
  ['reference', 'Reference runs of the casting'],
] as const

/** Every run there is; the address keeps the choice, so that it can be sent to somebody. */
export function ChooseRuns({ view, manner }: Props) {
  return (
    <form method="get" className="stack part" aria-label="Runs to hold against each other">
      <h2>Runs</h2>
      {whose.map(([kind, title]) => {
        const runs = view.runs.filter((run) => run.whose === kind)
        return runs.length === 0 ? null : (
          <CheckList
            key={`${kind} ${view.chosen.join()}`}
            label={title}
            name="run"
            defaultValues={view.chosen}
            options={runs.map((run) => ({ value: run.id, label: run.name, hint: hintOf(run, manner) }))}
          />
        )
      })}
      <Select
        key={view.chosen.join()}
        label="The run before, which the others are held against"
        name="from"
        defaultValue={view.chosen[0]}
        options={view.runs.map((run) => ({ value: run.id, label: run.name }))}
      />
      <div>
        <Button type="submit">Hold them against each other</Button>
      </div>
    </form>
  )
}

const hintOf = (run: RunLine, { timeZone, locale }: ShopLocale) => (
  <>
    {run.ports}, <When at={run.takenAt} zone={timeZone} locale={locale} style="date" />
    {run.jobNumber !== '' && `, job ${run.jobNumber}`}
    {run.by !== '' && `, ${run.by}`}
    {run.conditions !== '' && `. ${run.conditions}`}
  </>
)
