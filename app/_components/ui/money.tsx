import { formatMoney } from '@/lib/core/money/format-money'

export function Money({ minor, currency, locale }: { minor: number; currency: string; locale: string }) {
  return <data value={minor}>{formatMoney(minor, currency, locale)}</data>
}
