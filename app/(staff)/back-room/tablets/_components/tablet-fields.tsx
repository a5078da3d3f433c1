import type { ComponentProps } from 'react'
import { Select, type Option } from '@/app/_components/ui/select'
import { TextInput } from '@/app/_components/ui/text-input'

type Props = {
  stations: readonly Option[]
  name: Omit<ComponentProps<typeof TextInput>, 'label'>
  station: Omit<ComponentProps<typeof Select>, 'label' | 'options'>
}

export function TabletFields({ stations, name, station }: Props) {
  return (
    <>
      <TextInput label="Name" hint="Where it is, or what is written on it" required {...name} />
      <Select
        label="Station"
        hint="Its queue opens after the PIN."
        required
        empty="Choose one"
        options={stations}
        {...station}
      />
    </>
  )
}
