import { dateWords } from '@/lib/core/shop/when-words'
import type { Dossier } from './dossier'

type When = Parameters<typeof dateWords>[1]

/**
 * Why nobody works on this head, a line each, the decision with it; empty while work may go on. "STOP. On hold: cracked
 * between the seats. The owner has not decided yet."
 */
export function stopLines({ visit, facts }: Dossier, shop: When): string[] {
  if (visit.scrappedAt !== null) {
    const decided = visit.holds.findLast(({ decision }) => decision === 'scrap')
    const why = [decided?.reason, decided?.decisionNote].filter((part) => part).join(' ')
    return [`STOP. Scrapped ${dateWords(visit.scrappedAt, shop)}${why === '' ? '' : `: ${sentence(why)}`}`]
  }
  if (visit.returned !== null) {
    const { reason, at } = visit.returned
    return [`STOP. Returned as is ${dateWords(at, shop)}: ${sentence(reason)} No more work on it.`]
  }
  return facts.openHolds.map(({ reason }) => `STOP. On hold: ${sentence(reason)} Not decided yet: ask the owner.`)
}

const sentence = (words: string): string => (/[.!?]$/.test(words.trim()) ? words.trim() : `${words.trim()}.`)
