import { formatWhen } from '@/app/_components/ui/format'

/** "Ada Quill, 3 Mar 2026, 14:05"; '' when nobody changed it yet. */
export const changedBy = (
  last: { readonly by: string; readonly at: Date } | null,
  { timeZone, locale }: { readonly timeZone: string; readonly locale: string },
): string => (last ? `${last.by}, ${formatWhen(last.at, timeZone, locale, 'date-time')}` : '')
