import { Select } from '@/app/_components/ui/select'
import { TextInput } from '@/app/_components/ui/text-input'
import { rateIdOf } from '@/lib/core/money/tax-choice'

export type TaxOption = { readonly value: string; readonly label: string; readonly isDefault: boolean }

type Props<Control extends object> = {
  taxes: readonly TaxOption[]
  /** Percentages that the field may hold beside the shop's taxes: those of the price list, of an older line. */
  also?: readonly string[]
  hint?: string
  /** What the form gives the control. */
  control: Control
}

/** The tax of a line: one of the shop's by name; a percentage while the shop has named none. */
export function TaxField<Control extends object>({ taxes, also = [], hint, control }: Props<Control>) {
  if (taxes.length === 0) return <TextInput label="Tax, %" hint={hint} inputMode="decimal" {...control} />
  const typed = [...new Set(also)].filter((percent) => percent !== '' && rateIdOf(percent) === '')
  const options = [...taxes, ...typed.map((percent) => ({ value: percent, label: `${percent} %` }))]
  return <Select label="Tax" hint={hint} options={options} empty="No tax" {...control} />
}

/** What a new line starts with. */
export const firstTax = (taxes: readonly TaxOption[]): string => taxes.find(({ isDefault }) => isDefault)?.value ?? ''
