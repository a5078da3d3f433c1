import { changeShopWantedSchema, type ShopWantedForm, type WantedForm } from '@/lib/schemas/wanted'
import { changeShopWanted } from '@/lib/use-cases/settings/change-shop-wanted'
import type { Actor } from '@/lib/core/access/roles'

/** What this invented shop's benches work to where nobody says otherwise. */
const ofShop: Partial<ShopWantedForm> = {
  intakeSeatAngleDeg: '45',
  exhaustSeatAngleDeg: '45',
  intakeSeatWidthIn: '.060',
  exhaustSeatWidthIn: '.075',
  intakeGuideLeastIn: '.0012',
  intakeGuideMostIn: '.0020',
  exhaustGuideLeastIn: '.0016',
  exhaustGuideMostIn: '.0024',
}

/** What one job asks of its seats and springs. */
export const refreshWanted: Partial<WantedForm> = {
  intakeSeatWidthIn: '.055',
  exhaustSeatWidthIn: '.070',
  runoutMostIn: '.0015',
  intakeRecessionIn: '.004',
  exhaustRecessionIn: '.004',
  intakeStemHeightIn: '1.980',
  exhaustStemHeightIn: '1.995',
  intakeInstalledHeightIn: '1.810',
  exhaustInstalledHeightIn: '1.810',
  intakeCoilBindIn: '1.060',
  exhaustCoilBindIn: '1.060',
  intakeSeatPressureLbf: '130',
  exhaustSeatPressureLbf: '130',
  intakeOpenPressureLbf: '340',
  exhaustOpenPressureLbf: '340',
}

export async function seedShopWanted(actor: Actor, version: number, now: Date): Promise<void> {
  const reason = 'As we have always done it'
  await changeShopWanted(actor, changeShopWantedSchema.parse({ version, wanted: ofShop, reason }), { now })
}
