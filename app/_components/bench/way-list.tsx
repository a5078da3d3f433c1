'use client'
import { memo } from 'react'
import { Sign } from '@/app/_components/ui/sign'
import { formatMoney } from '@/lib/core/money/format-money'
import type { CutOption } from '@/lib/core/options/bench-types'
import { wayEffort, wayTitle } from '@/lib/core/options/way-words'
import styles from './way-list.module.css'

export type MoneyManner = { readonly currency: string; readonly locale: string }

type Props = {
  ways: readonly CutOption[]
  chosen: string
  onChoose: (id: string) => void
  /** How the shop writes money; null: prices are not for this person. */
  money: MoneyManner | null
  name: string
}

/**
 * Every way to the target, mildest first, each with why it stands there; castings to be bought unfold. It does not change
 * while the slider moves.
 */
export const WayList = memo(function WayList({ ways, chosen, onChoose, money, name }: Props) {
  const own = ways.filter(({ start }) => start.supply === 'own')
  const bought = ways.filter(({ start }) => start.supply !== 'own')
  const line = (way: CutOption) => (
    <WayLine key={way.id} way={way} checked={way.id === chosen} onChoose={onChoose} money={money} name={name} />
  )
  return (
    <fieldset className={styles.ways}>
      <legend>Options, mildest first</legend>
      {own.map(line)}
      {bought.length > 0 && (
        <details open={own.length === 0 || bought.some(({ id }) => id === chosen)}>
          <summary>From another casting: {bought.length === 1 ? '1 option' : `${bought.length} options`}</summary>
          {bought.map(line)}
        </details>
      )}
    </fieldset>
  )
})

type LineProps = Pick<Props, 'onChoose' | 'money' | 'name'> & { way: CutOption; checked: boolean }

function WayLine({ way, checked, onChoose, money, name }: LineProps) {
  return (
    <label className={styles.way}>
      <input type="radio" name={name} value={way.id} checked={checked} onChange={() => onChoose(way.id)} />
      <span className={styles.said}>
        <span className={way.ruledOut === '' ? styles.title : styles.out}>{wayTitle(way)}</span>
        {way.start.supply !== 'own' && <span>{way.start.name}</span>}
        {way.ruledOut === '' ? (
          <span className={styles.note}>
            {[effort(way), price(way, money)].filter(Boolean).join('; ')}. <em>{sentence(way.why)}</em>
          </span>
        ) : (
          <span className={styles.note}>
            <Sign kind="stop" /> Not possible: {way.ruledOut}
          </span>
        )}
      </span>
    </label>
  )
}

const sentence = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}.`

const effort = (way: CutOption): string => {
  const cautions = way.cautions.length
  const warned = cautions === 0 ? '' : cautions === 1 ? ', 1 caution' : `, ${cautions} cautions`
  return `${wayEffort(way)}${warned}`
}

function price({ priceMinor, unpriced }: CutOption, money: MoneyManner | null): string {
  if (!money || priceMinor === null) return ''
  const without = unpriced.length === 0 ? '' : `, ${unpriced.length} not on the price list`
  return `${formatMoney(priceMinor, money.currency, money.locale)} a head${without}`
}
