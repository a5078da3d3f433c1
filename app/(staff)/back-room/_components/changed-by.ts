import { momentWords, type WhenManner } from '@/lib/core/shop/when-words'

/** "Ada Quill, 3 Mar 2026, 14:05"; '' when nobody changed it yet. */
export const changedBy = (last: { readonly by: string; readonly at: Date } | null, manner: WhenManner): string =>
  last ? `${last.by}, ${momentWords(last.at, manner)}` : ''
