/** A shop has one locale and one zone; more than these are tests, or a process that serves for years. */
const mostKept = 200

function keeper<Options, Format>(make: (locale: string, options: Options) => Format) {
  const kept = new Map<string, Format>()
  return (locale: string, options: Options): Format => {
    const key = `${locale} ${JSON.stringify(options)}`
    const known = kept.get(key)
    if (known) return known
    if (kept.size >= mostKept) kept.clear()
    const format = make(locale, options)
    kept.set(key, format)
    return format
  }
}

/**
 * The platform's way to write moments in a locale. To make one takes as long as to use it a hundred times, and it holds
 * memory that is given back late; so each is made once.
 *
 * Example: "en-US" with { dateStyle: 'medium', timeZone: 'UTC' } writes "Mar 3, 2026". Source: Unicode CLDR, by `Intl`.
 */
export const dateFormat = keeper(
  (locale: string, options: Intl.DateTimeFormatOptions) => new Intl.DateTimeFormat(locale, options),
)

/** The same for numbers and money. Example: "de-DE" with {} writes 1234.5 as "1.234,5". Source: Unicode CLDR, by `Intl`. */
export const numberFormat = keeper(
  (locale: string, options: Intl.NumberFormatOptions) => new Intl.NumberFormat(locale, options),
)
