import type { Option } from '@/app/_components/ui/select'

export const paperOptions: readonly Option[] = [
  { value: 'letter', label: 'Letter' },
  { value: 'a4', label: 'A4' },
]

const offered = [
  'en-US',
  'en-CA',
  'en-GB',
  'en-IE',
  'en-AU',
  'en-NZ',
  'en-ZA',
  'de-DE',
  'fr-FR',
  'es-ES',
  'it-IT',
  'pl-PL',
  'sv-SE',
]

const sample = (locale: string): string => {
  const day = new Intl.DateTimeFormat(locale, { dateStyle: 'medium', timeZone: 'UTC' }).format(Date.UTC(2026, 2, 14))
  return `${day}; ${new Intl.NumberFormat(locale).format(1234.5)}`
}

/** How dates and numbers are written, shown by what they look like. `also`: the shop's own, where it is another. */
export const localeOptions = (also = ''): Option[] =>
  [...new Set([...offered, also])]
    .filter((locale) => locale !== '')
    .map((locale) => ({ value: locale, label: `${locale}: ${sample(locale)}` }))

/** Every zone the server knows, as it is written in every operating system. */
export const zoneOptions = (): Option[] =>
  Intl.supportedValuesOf('timeZone').map((zone) => ({ value: zone, label: zone.replaceAll('_', ' ') }))

export function currencyOptions(): Option[] {
  const names = new Intl.DisplayNames('en', { type: 'currency' })
  return Intl.supportedValuesOf('currency').map((code) => ({
    value: code,
    label: `${code}: ${names.of(code) ?? code}`,
  }))
}
