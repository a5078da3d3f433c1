'use server'
import { z } from 'zod'
import { seeRack } from '@/lib/use-cases/tablets/see-rack'
import { tabletToken } from '@/lib/web/tablet-cookie'

/** Why a PIN was refused. `waitMs`: before the next try; 0 after a wrong one that costs nothing yet. */
export type PinRefused = { readonly kind: 'no-tablet' } | { readonly kind: 'refused'; readonly waitMs: number }

/** Asked after a PIN was refused: the sign-in itself says no more than that. Changes nothing. */
export async function whyPinRefused(personId: string): Promise<PinRefused> {
  const rack = await seeRack(await tabletToken(), new Date())
  if (!rack) return { kind: 'no-tablet' }
  const asked = z.string().parse(personId)
  return { kind: 'refused', waitMs: rack.cards.find((card) => card.personId === asked)?.waitMs ?? 0 }
}
