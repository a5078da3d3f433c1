'use client'
import { useWatch } from 'react-hook-form'
import { ActionForm } from '@/app/_components/form/action-form'
import { TabDraftNotice } from '@/app/_components/form/tab-draft-notice'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { useTabDraft } from '@/app/_components/form/use-tab-draft'
import { FormFigure } from '@/app/_components/form/form-figure'
import { usePicks } from '@/app/_components/pick/use-picks'
import { Check } from '@/app/_components/ui/check'
import { TextArea } from '@/app/_components/ui/text-area'
import { TextInput } from '@/app/_components/ui/text-input'
import { WantedFields } from '@/app/_components/wanted/wanted-fields'
import { typedWantedKeys } from '@/lib/core/wanted/figures'
import { bookJobSchema, emptyBooking, type BookJobForm } from '@/lib/schemas/job'
import type { BookingView } from '@/lib/use-cases/jobs/see-booking'
import { bookJobAction } from '../actions'
import { AlikePart } from './alike-part'
import { BenchPart } from './bench-part'
import styles from './booking.module.css'
import { EngineFields } from './engine-fields'
import { ErrorList } from './error-list'
import { FirstPlan } from './first-plan'
import { Fold } from './fold'
import { CastingField } from './head-fields'
import { HeadsPart } from './heads-part'
import { heldClass, heldEngine, heldNote, heldWanted } from './held'
import { PromisePart } from './promise-part'
import { PricesPart } from './prices-part'
import { TargetPart } from './target-part'
import { TotalLine } from './total-line'
import { WorkPart } from './work-part'

/** The thickness of flat-deck heads is asked with the target. */
const besideTheTarget = typedWantedKeys.filter((key) => key !== 'finishedThicknessIn')

/** A simple job is what stands open: who, which heads, what to do, by when. The rest unfolds. */
type Props = {
  booking: BookingView
  /** What it begins with; left out: nothing. */
  initial?: BookJobForm
  /** Names the draft: one that began elsewhere is another. */
  draftKey?: string
}

export function BookingForm({ booking, initial, draftKey = '' }: Props) {
  const form = useActionForm(bookJobSchema, bookJobAction, {
    defaultValues: initial ?? emptyBooking(),
  })
  const heads = useWatch({ control: form.form.control, name: 'heads' })
  const castings = usePicks(
    'castings',
    booking.castings,
    heads.map(({ castingId }) => castingId),
  )
  const drafts = useTabDraft({ kind: 'book a job', variant: draftKey, nameOf: draftName }, form)
  return (
    <>
      <TabDraftNotice drafts={drafts} zone={booking.timeZone} locale={booking.locale} />
      <ActionForm
        form={form}
        submitLabel="Book the job"
        className="stack"
        foot={<TotalLine form={form} booking={booking} />}
        refusalElsewhere={form.refusal?.alike !== undefined}
      >
        <AlikePart form={form}>
          <CastingField form={form} at={0} castings={castings} />
        </AlikePart>
        <div className={styles.desk}>
          <div className="stack">
            <HeadsPart form={form} castings={castings} />
            <section className="part" aria-label="What is wanted">
              <h2>Work</h2>
              <TargetPart form={form} castings={castings} />
              <WorkPart form={form} rules={booking.rules} />
              <FirstPlan form={form} />
            </section>
          </div>
          <div className="stack">
            <PromisePart form={form} today={booking.today} locale={booking.locale} />
            <PricesPart form={form} booking={booking} />
          </div>
        </div>
        <BenchPart form={form} booking={booking} />
        <Fold form={form} title="Engine" within={['engine']} holds={heldEngine}>
          <EngineFields
            text={form.text}
            figure={(key, words) => <FormFigure key={key} form={form} name={`engine.figures.${key}`} {...words} />}
          />
        </Fold>
        <Fold
          form={form}
          title="Class limits and finish"
          within={['classFlatOnly', 'classMinCc', 'classMaxCut', 'finishAsked']}
          holds={heldClass}
        >
          <div className={styles.fields}>
            <Check label="Flat cuts only" {...form.text('classFlatOnly')} />
            <FormFigure form={form} name="classMinCc" label="Smallest chamber allowed" quantity="chamberVolume" />
            <FormFigure form={form} name="classMaxCut" label="Deepest cut allowed" quantity="cutDepth" />
            <TextInput
              label="Deck finish asked"
              hint="As the gasket’s maker asks for it."
              {...form.text('finishAsked')}
            />
          </div>
        </Fold>
        <Fold form={form} title="Wanted figures" within={['wanted']} holds={heldWanted}>
          <p className="soft">
            What the benches work to on all heads. Empty: as the casting record or the shop says. Valve lift is under
            Engine.
          </p>
          <WantedFields
            keys={besideTheTarget}
            figure={(key, words) => <FormFigure key={key} form={form} name={`wanted.${key}`} {...words} />}
          />
        </Fold>
        <Fold form={form} title="Note and parts" within={['note', 'partsPlace']} holds={heldNote}>
          <div className={styles.fields}>
            <TextArea label="Note" {...form.text('note')} />
            <TextInput label="Parts location" {...form.text('partsPlace')} />
          </div>
        </Fold>
        <ErrorList form={form} />
      </ActionForm>
    </>
  )
}

/** "Mara Feld, 2 heads": by which a draft is known again. */
const draftName = ({ customer, heads }: BookJobForm): string =>
  `${customer.name || 'No name yet'}, ${heads.length === 1 ? '1 head' : `${heads.length} heads`}`
