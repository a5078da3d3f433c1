import { formatMoney } from './format'

export function Money({ minor, currency, locale }: { minor: number; currency: string; locale: string }) {
  return <data value={minor}>{formatMoney(minor, currency, locale)}</data>
}
