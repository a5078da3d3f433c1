/**
 * Job numbers that what is typed may be short for, without zeros or dash: of a year that is named, or of every year.
 * Derived: a number is two figures of the year, a dash, and at least four figures that count from 1 in each year.
 * Example: "26-14" → ["26-0014"]; "260117" → ["26-0117"] and what 260117 is in each year.
 */
export function jobNumbersAsked(asked: string): string[] {
  const text = asked.trim()
  const parted = /^(\d{2})\s?[-/\s]\s?(\d{1,6})$/.exec(text)
  if (parted) return numberOf(parted[1] ?? '', parted[2] ?? '')
  if (!/^\d{1,8}$/.test(text)) return []
  const running = text.length <= 6 ? allYears.flatMap((year) => numberOf(year, text)) : []
  return [...(text.length >= 5 ? numberOf(text.slice(0, 2), text.slice(2)) : []), ...running]
}

const allYears = Array.from({ length: 100 }, (_, year) => String(year).padStart(2, '0'))

function numberOf(year: string, counted: string): string[] {
  const running = Number(counted)
  return running === 0 ? [] : [`${year}-${String(running).padStart(4, '0')}`]
}
