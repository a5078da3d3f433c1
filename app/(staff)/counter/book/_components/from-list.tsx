'use client'
import { useState } from 'react'
import { PickSelect } from '@/app/_components/pick/pick-select'
import type { Picks } from '@/app/_components/pick/use-picks'
import { Button } from '@/app/_components/ui/button'
import type { PricePick } from '@/lib/core/money/price-pick'
import styles from './booking.module.css'

type Props = { list: Picks<'prices'>; action: string; onPick: (item: PricePick) => void }

/** The shop's price list beside a price line. Nothing happens before the button: a list is leafed through with the arrows. */
export function FromList({ list, action, onPick }: Props) {
  const [chosen, setChosen] = useState('')
  if (list.known.length === 0) return null
  const item = list.known.find((one) => one.id === chosen)
  return (
    <div className={styles.fromList}>
      <PickSelect
        label="From the list, for one head"
        picks={list}
        wordsOf={({ label }) => label}
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
