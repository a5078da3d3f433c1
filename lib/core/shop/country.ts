const isCountry = (code: string): boolean => /^[A-Z]{2}$/.test(code)

/**
 * The country whose telephone numbers are typed without a country's code: the one that was chosen, else that of the shop's
 * language, else that of its currency, else US.
 * Derived: "en-GB" names the country GB; a currency's first two letters name its country (ISO 4217), but for the few that
 * begin with X and for EUR.
 * Example: { country: '', locale: 'en-GB', currency: 'USD' } → "GB".
 */
export function phoneCountry(shop: { country: string; locale: string; currency: string }): string {
  if (isCountry(shop.country)) return shop.country
  const region = new Intl.Locale(shop.locale).region ?? ''
  if (isCountry(region)) return region
  const ofMoney = shop.currency.slice(0, 2)
  return isCountry(ofMoney) && !ofMoney.startsWith('X') && shop.currency !== 'EUR' ? ofMoney : 'US'
}
