'use client'
import { ButtonLink } from '@/app/_components/ui/button-link'
import type { JobView } from '@/lib/use-cases/jobs/see-job'
import type { AddProps } from './add-price'
import type { EngineProps } from './change-engine'
import type { PriceProps } from './change-price'
import type { WantedProps } from './change-wanted'
import type { WorkProps } from './change-work'
import styles from './job.module.css'
import { FormInDialog, FormInFold, FormInPlace } from './later-form'

// What opens each form of the job. A form is in `forms.ts`, and comes when it is asked for.

type Named = { label: string; of: string }

/** A screen reader is told what it is done to. */
const Named = ({ label, of }: Named) => (
  <>
    {label}
    <span className="visually-hidden"> {of}</span>
  </>
)

export const ChangeJob = ({ job }: { job: JobView }) => (
  <FormInPlace label="Change promise, targets, note">
    {(forms, close) => <forms.ChangeJobForm job={job} onClose={close} />}
  </FormInPlace>
)

export const ChangeEngine = (of: EngineProps) => (
  <FormInPlace label="Change the engine">
    {(forms, close) => <forms.ChangeEngineForm {...of} onClose={close} />}
  </FormInPlace>
)

export const ChangeWork = (of: WorkProps) => (
  <FormInPlace label="Change the ordered work">
    {(forms, close) => <forms.ChangeWorkForm {...of} onClose={close} />}
  </FormInPlace>
)

export const ChangeWanted = (of: WantedProps) => (
  <FormInPlace label="Change the wanted figures">
    {(forms, close) => <forms.ChangeWantedForm {...of} onClose={close} />}
  </FormInPlace>
)

/** What becomes of a job beside its work: a head more, the same again, or nothing at all. */
export const JobDeeds = ({ job }: { job: JobView }) => (
  <>
    {job.isOpen && (
      <FormInDialog label="Add a head" title="Add a head" closeLabel="Close">
        {(forms, close) => <forms.AddHead job={job} onDone={close} />}
      </FormInDialog>
    )}
    <ButtonLink href={`/counter/book?again=${job.number}`}>Book the same again</ButtonLink>
    {job.isOpen && (
      <FormInDialog label="Cancel the job" variant="quiet" title={`Cancel job ${job.number}`} closeLabel="Close">
        {(forms, close) => <forms.CancelJob job={job} onDone={close} />}
      </FormInDialog>
    )}
  </>
)

type Head = { jobId: string; visitId: string; tag: string }

export const TakeOff = ({ jobId, visitId, tag }: Head) => (
  <FormInDialog label={<Named label="Take off" of={tag} />} variant="quiet" title="Take off" closeLabel="Close">
    {(forms, close) => <forms.TakeOffForm jobId={jobId} visitId={visitId} onDone={close} />}
  </FormInDialog>
)

const takeBack = 'Take back the hand-over'

export const UndoHandOver = ({ visitId, tag }: Omit<Head, 'jobId'>) => (
  <FormInDialog label={<Named label={takeBack} of={tag} />} variant="quiet" title={takeBack} closeLabel="Close">
    {(forms, close) => <forms.UndoHandOverForm visitId={visitId} onDone={close} />}
  </FormInDialog>
)

/** Changes or removes a line that is on no invoice yet; both ask for a reason. */
export function ChangePrice(of: PriceProps) {
  const { name } = of.line
  return (
    <div className={styles.lineDeeds}>
      <FormInDialog
        label={<Named label="Change" of={name} />}
        variant="quiet"
        title={`Change “${name}”`}
        closeLabel="Cancel"
      >
        {(forms, close) => <forms.ChangePriceForm {...of} onDone={close} />}
      </FormInDialog>
      <FormInDialog
        label={<Named label="Remove" of={name} />}
        variant="quiet"
        title={`Remove “${name}”`}
        closeLabel="Cancel"
      >
        {(forms, close) => <forms.RemovePriceForm line={of.line} onDone={close} />}
      </FormInDialog>
    </div>
  )
}

export const AddPrice = (of: AddProps) => (
  <FormInFold summary="Add a price line">{(forms) => <forms.AddPrice {...of} />}</FormInFold>
)

export const AddDiscount = (of: Omit<AddProps, 'list'>) => (
  <FormInFold summary="Give a discount">{(forms) => <forms.AddDiscount {...of} />}</FormInFold>
)

export const VoidPayment = ({ paymentId, receipt }: { paymentId: string; receipt: string }) => (
  <FormInDialog
    label={<Named label="Void" of={`payment ${receipt}`} />}
    variant="quiet"
    title="Void this payment"
    closeLabel="Cancel"
  >
    {(forms, close) => <forms.VoidForm paymentId={paymentId} onDone={close} />}
  </FormInDialog>
)
