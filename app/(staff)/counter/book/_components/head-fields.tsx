'use client'
import { useWatch } from 'react-hook-form'
import { FormFigure } from '@/app/_components/form/form-figure'
import { PickSelect } from '@/app/_components/pick/pick-select'
import type { Picks } from '@/app/_components/pick/use-picks'
import { Button } from '@/app/_components/ui/button'
import { Check } from '@/app/_components/ui/check'
import { Choice } from '@/app/_components/ui/choice'
import { Select } from '@/app/_components/ui/select'
import { TextInput } from '@/app/_components/ui/text-input'
import type { ChamberForm } from '@/lib/core/casting/figures'
import type { BookingActionForm } from './booking-action-form'
import styles from './booking.module.css'
import { Fold } from './fold'
import { heldHead } from './held'
import { HeadLookup } from './head-lookup'

type Props = {
  form: BookingActionForm
  at: number
  castings: Picks<'castings'>
  onRemove?: () => void
}

const formOptions: { value: ChamberForm; label: string }[] = [
  { value: 'as-cast', label: 'as cast' },
  { value: 'machined', label: 'machined' },
  { value: 'opened', label: 'opened' },
]

const sourceOptions = [
  { value: 'customer', label: 'customer' },
  { value: 'bought', label: 'shop' },
  { value: 'bought-cut', label: 'shop, already cut by its maker' },
]

/** The casting of a head. That of the first one is also that of the heads that had the same. */
export function CastingField({ form, at, castings }: Omit<Props, 'onRemove'>) {
  const { onChange, ...rest } = form.text(`heads.${at}.castingId`)
  const chosen = useWatch({ control: form.form.control, name: `heads.${at}.castingId` })
  const choose = (event: { target: { value: string } }) => {
    const heads = form.form.getValues('heads')
    const before = heads[at]?.castingId
    heads.forEach((head, other) => {
      if (at !== 0 || other === 0 || head.headId !== '' || head.castingId !== before) return
      form.form.setValue(`heads.${other}.castingId`, event.target.value, { shouldDirty: true })
    })
    return onChange(event)
  }
  return (
    <PickSelect
      label="Casting"
      empty="Not on record"
      picks={castings}
      wordsOf={({ name, nominal }) => (nominal === '' ? name : `${name}, nominal ${nominal}`)}
      {...rest}
      value={chosen}
      onChange={choose}
    />
  )
}

export function HeadFields({ form, at, castings, onRemove }: Props) {
  const head = useWatch({ control: form.form.control, name: `heads.${at}` })
  const known = (head?.headId ?? '') !== ''
  const isFlatDeck = castings.known.some(({ id, isFlatDeck }) => isFlatDeck && id === head?.castingId)
  return (
    <fieldset className={styles.head}>
      <legend>Head {at + 1}</legend>
      <div className={styles.fields}>
        {at > 0 && <CastingField form={form} at={at} castings={castings} />}
        <TextInput label="Bank or side" placeholder="left, right, front…" {...form.text(`heads.${at}.side`)} />
        <TextInput
          label="Tag number"
          hint={head?.source === 'customer' ? 'Empty: the next number.' : 'Empty: tagged when it arrives.'}
          autoComplete="off"
          autoCapitalize="characters"
          {...form.text(`heads.${at}.tag`)}
        />
        <HeadLookup form={form} at={at} />
      </div>
      <Fold
        form={form}
        title="More about this head"
        within={[`heads.${at}.presentCc`, `heads.${at}.targetCc`, `heads.${at}.comeback`]}
        holds={({ heads }) => heldHead(heads[at])}
        inner
      >
        {!known && <NewHeadFields form={form} at={at} />}
        <VisitFields form={form} at={at} hasChambers={!isFlatDeck} />
        {known && (
          <div className={styles.fields}>
            <Check label="It comes back because of our earlier work" {...form.text(`heads.${at}.comeback`)} />
            <TextInput label="Cause, as far as known" {...form.text(`heads.${at}.comebackCause`)} />
            <TextInput label="Who pays" {...form.text(`heads.${at}.comebackPays`)} />
          </div>
        )}
      </Fold>
      {onRemove && (
        <div className="row">
          <Button variant="quiet" onClick={onRemove}>
            Remove head {at + 1}
          </Button>
        </div>
      )}
    </fieldset>
  )
}

function NewHeadFields({ form, at }: { form: BookingActionForm; at: number }) {
  return (
    <div className={styles.fields}>
      <TextInput label="Stamp on this head" {...form.text(`heads.${at}.stamp`)} />
      <TextInput label="Casting marks" {...form.text(`heads.${at}.marks`)} />
      <TextInput label="Material" hint="Empty: as its casting record says." {...form.text(`heads.${at}.material`)} />
      <Select label="Chamber form" options={formOptions} {...form.text(`heads.${at}.chamberForm`)} />
    </div>
  )
}

function VisitFields({ form, at, hasChambers }: { form: BookingActionForm; at: number; hasChambers: boolean }) {
  return (
    <>
      <Choice label="Supplied by" options={sourceOptions} {...form.text(`heads.${at}.source`)} />
      <div className="row">
        <Check label="Used before" {...form.text(`heads.${at}.used`)} />
        <Check label="Came assembled" {...form.text(`heads.${at}.cameAssembled`)} />
        <Check label="Was overheated" {...form.text(`heads.${at}.overheated`)} />
      </div>
      <div className={styles.fields}>
        {hasChambers && (
          <>
            <FormFigure
              form={form}
              name={`heads.${at}.presentCc`}
              label="Chamber now, per customer"
              hint="We measure it ourselves."
              quantity="chamberVolume"
            />
            <FormFigure
              form={form}
              name={`heads.${at}.targetCc`}
              label="Target of this head"
              hint="Empty: the job’s target."
              quantity="chamberVolume"
            />
          </>
        )}
        <TextInput label="What came with it" {...form.text(`heads.${at}.cameWith`)} />
        <TextInput label="Owner of what came with it" {...form.text(`heads.${at}.ownedBy`)} />
        <TextInput label="Rack location" {...form.text(`heads.${at}.rackPlace`)} />
      </div>
    </>
  )
}
