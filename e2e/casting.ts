import { expect, type Page } from '@playwright/test'
import { choose, signIn } from './person'

/**
 * The figures of an invented wedge head. Opening area 10.1706 in² is 6.0 thou per cc, its centre at 0.635 of the milled
 * width (3.810 of 6.000) makes 20 thou flat and 63 thou at the deep edge take 10 cc [both common practice].
 */
const figures: Readonly<Record<string, string>> = {
  'as-cast.nominalCc': '64.0',
  'as-cast.openingAreaIn2': '10.1706',
  'as-cast.openingCentreIn': '3.810',
  'any.milledWidthIn': '6.000',
  'any.deckLengthIn': '20.00',
  'any.thicknessNewIn': '4.250',
  'any.thicknessLeastIn': '4.130',
  'any.largestAngleDeg': '1.0',
  'any.intakeValveIn': '2.055',
  'any.exhaustValveIn': '1.600',
  'any.intakeValveAngleDeg': '22.0',
  'any.exhaustValveAngleDeg': '22.0',
  'any.intakeValveXIn': '3.05',
  'any.exhaustValveXIn': '3.30',
  'any.intakeValveZIn': '0.520',
  'any.exhaustValveZIn': '0.470',
  'any.intakeFaceDeg': '10.0',
  'any.faceHeightIn': '2.60',
  'any.portXIn': '0.20',
  'any.portZIn': '2.10',
  'any.dowelXIn': '0.75',
  'any.dowelDepthIn': '0.375',
  'any.boltHoleIn': '0.470',
  'any.boltIn': '0.4375',
  'any.boltHoleLengthIn': '3.750',
  'any.spotFaceIn': '0.875',
  'any.threadLeftIn': '0.250',
}

/** A casting of which the shop has cut none: its rate is the record's own, whatever other jobs have taught of others. */
export async function addCasting(page: Page, name: string): Promise<void> {
  await signIn(page, 'orla')
  await page.goto('/back-room/castings/new')
  await page.getByLabel('Name').first().fill(name)
  await page.getByLabel('Material').fill('aluminium')
  await page.getByRole('textbox', { name: /^Chambers/ }).fill('4')
  await choose(page, 'Chamber shape', 'Open')
  for (const [key, text] of Object.entries(figures)) await page.locator(`[name="figures.${key}"]`).fill(text)
  await page.getByRole('button', { name: 'Add this casting' }).click()
  await expect(page.getByRole('heading', { level: 1, name })).toBeVisible()
}
