'use client'
import { memo } from 'react'
import { Table } from '@/app/_components/ui/table'
import { formatMoney } from '@/lib/core/money/format-money'
import type { Start, CutOption } from '@/lib/core/options/bench-types'
import { presentMeanCc } from '@/lib/core/options/bench-depth'
import { wayTitle } from '@/lib/core/options/way-words'
import { formatFigure } from '@/lib/core/units/format-figure'
import type { MoneyManner } from './way-list'

type Props = { ways: readonly CutOption[]; money: MoneyManner | null }

/** The heads to start from side by side, each by its mildest way. */
export const StartsTable = memo(function StartsTable({ ways, money }: Props) {
  const starts = [...new Map(ways.map((way) => [way.start.id, way.start])).values()]
  if (starts.length < 2) return null
  return (
    <Table
      label="Heads to start from"
      caption
      columns={[
        { id: 'start', label: 'Start', head: true },
        { id: 'now', label: 'Now', figure: true },
        { id: 'way', label: 'Mildest way' },
        { id: 'steps', label: 'Steps', figure: true },
        { id: 'days', label: 'Days', figure: true },
        ...(money ? [{ id: 'price', label: 'A head', figure: true }] : []),
      ]}
      rows={starts.map((start) =>
        rowOf(
          start,
          ways.find((way) => way.start.id === start.id),
          money,
        ),
      )}
    />
  )
})

function rowOf(start: Start, way: CutOption | undefined, money: MoneyManner | null) {
  const possible = way && way.ruledOut === ''
  return {
    id: start.id,
    cells: {
      start:
        start.supply === 'own' ? start.name : `${start.name}, ${start.supply === 'stock' ? 'stock' : 'special order'}`,
      now: nowText(start),
      way: possible
        ? wayTitle(way)
        : (way?.ruledOut ?? start.flatDeck)
          ? 'its thickness is not on record'
          : 'the volume it holds is not on record',
      steps: possible ? way.steps.length : '–',
      days: possible && way.days !== null ? Math.ceil(way.days) : '–',
      price:
        possible && money && way.priceMinor !== null ? formatMoney(way.priceMinor, money.currency, money.locale) : '–',
    },
  }
}

/** What it holds now; a flat-deck head, how thick it is. */
function nowText(start: Start): string {
  if (start.flatDeck) {
    const thicknessIn = start.heads[0]?.thicknessIn ?? null
    return thicknessIn === null ? 'not known' : formatFigure(thicknessIn, 'thickness')
  }
  const meanCc = presentMeanCc(start)
  return meanCc === null ? 'not known' : `${meanCc.toFixed(1)} cc${start.presentNominal ? ' nominal' : ''}`
}
