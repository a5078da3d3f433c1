'use client'
import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { Select } from '@/app/_components/ui/select'
import type { PricePick } from '@/lib/core/money/price-pick'
import styles from './booking.module.css'

type Props = { list: readonly PricePick[]; action: string; onPick: (item: PricePick) => void }

/** The shop's price list beside a price line. Nothing happens before the button: a list is leafed through with the arrows. */
export function FromList({ list, action, onPick }: Props) {
  const [chosen, setChosen] = useState('')
  if (list.length === 0) return null
  const item = list.find((one) => one.id === chosen)
  return (
    <div className={styles.fromList}>
      <Select
        label="From the list, for one head"
        options={list.map((one) => ({ value: one.id, label: one.label }))}
        empty="Choose one"
        value={chosen}
        onChange={(event) => setChosen(event.target.value)}
      />
      <Button disabled={!item} onClick={() => item && onPick(item)}>
        {action}
      </Button>
    </div>
  )
}
