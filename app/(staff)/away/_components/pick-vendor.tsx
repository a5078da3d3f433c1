'use client'
import type { ComponentProps } from 'react'
import { PickSelect } from '@/app/_components/pick/pick-select'
import { usePicks, type FirstPicks } from '@/app/_components/pick/use-picks'

type Props = Omit<ComponentProps<typeof PickSelect<'vendors'>>, 'picks' | 'wordsOf'> & {
  first: FirstPicks<'vendors'>
}

/** To whom an order goes. */
export function PickVendor({ first, ...rest }: Props) {
  const picks = usePicks('vendors', first, [rest.value])
  return (
    <PickSelect
      picks={picks}
      wordsOf={({ name, services }) => (services === '' ? name : `${name}: ${services}`)}
      {...rest}
    />
  )
}
