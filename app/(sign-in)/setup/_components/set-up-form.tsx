'use client'
import { useRouter } from 'next/navigation'
import { useEffect } from 'react'
import { ActionForm } from '@/app/_components/form/action-form'
import { NewPassword } from '@/app/_components/form/new-password'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { Choice } from '@/app/_components/ui/choice'
import { Select, type Option } from '@/app/_components/ui/select'
import { TextArea } from '@/app/_components/ui/text-area'
import { TextInput } from '@/app/_components/ui/text-input'
import { setUpShopSchema, type SetUpShopForm } from '@/lib/schemas/shop'
import { setUpShopAction } from '../actions'

export type SetUpOptions = {
  readonly zones: readonly Option[]
  readonly locales: readonly Option[]
  readonly currencies: readonly Option[]
  readonly papers: readonly Option[]
}

const blank: SetUpShopForm = {
  code: '',
  shop: { name: '', address: '', phone: '', timeZone: '', locale: '', currency: '', paper: 'letter' },
  owner: { name: '', signIn: '', password: '' },
  again: '',
}

export function SetUpForm({ options }: { options: SetUpOptions }) {
  const router = useRouter()
  const form = useActionForm(setUpShopSchema, setUpShopAction, {
    defaultValues: blank,
    onDone: () => router.push('/sign-in'),
  })

  // Only the browser knows where it stands; what it says is a first answer, to be changed.
  const { setValue } = form.form
  useEffect(() => {
    const here = Intl.DateTimeFormat().resolvedOptions().timeZone
    const offers = (list: readonly Option[], value: string) => list.some((option) => option.value === value)
    if (offers(options.zones, here)) setValue('shop.timeZone', here)
    if (offers(options.locales, navigator.language)) setValue('shop.locale', navigator.language)
  }, [setValue, options])

  return (
    <ActionForm form={form} submitLabel="Set up this shop" className="stack-large">
      <TextInput
        label="One-time code"
        hint="Three groups of four characters, shown on the console where npm run shop was started"
        required
        autoComplete="off"
        autoCapitalize="characters"
        spellCheck={false}
        {...form.text('code')}
      />
      <section className="part" aria-labelledby="shop">
        <h2 id="shop">The shop</h2>
        <TextInput label="Name" hint="Printed at the top of every paper" required {...form.text('shop.name')} />
        <TextArea label="Address" required={false} {...form.text('shop.address')} />
        <TextInput label="Phone" required={false} type="tel" {...form.text('shop.phone')} />
        <Select
          label="Time zone"
          hint="Cannot be changed later."
          required
          empty="Choose one"
          options={options.zones}
          {...form.text('shop.timeZone')}
        />
        <Select
          label="Currency"
          hint="Cannot be changed later."
          required
          empty="Choose one"
          options={options.currencies}
          {...form.text('shop.currency')}
        />
        <Select
          label="Dates and numbers"
          required
          empty="Choose one"
          options={options.locales}
          {...form.text('shop.locale')}
        />
        <Choice label="Paper" required options={options.papers} {...form.text('shop.paper')} />
      </section>
      <section className="part" aria-labelledby="owner">
        <h2 id="owner">The owner</h2>
        <p className="soft">You. Add other people in the Back room later.</p>
        <TextInput label="Name" required autoComplete="name" {...form.text('owner.name')} />
        <TextInput
          label="Sign-in name"
          hint="Short, without spaces"
          required
          autoComplete="username"
          autoCapitalize="off"
          spellCheck={false}
          {...form.text('owner.signIn')}
        />
        <NewPassword
          label="Password"
          more="A short sentence is easy to remember."
          first={form.text('owner.password')}
          again={form.text('again')}
        />
      </section>
    </ActionForm>
  )
}
