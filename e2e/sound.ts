import AxeBuilder from '@axe-core/playwright'
import { expect, type Page } from '@playwright/test'

const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']

export async function fitsItsWidth(page: Page, where = page.url()): Promise<void> {
  const sideways = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)
  expect(sideways, `${where} sticks out sideways`).toBeLessThanOrEqual(0)
}

/**
 * Nothing sticks out sideways, and axe finds nothing. No page of ours has frames: axe is spared the page of its own that
 * would gather what was found in them, and the long lists of what passed.
 */
export async function isSound(page: Page, where = page.url()): Promise<void> {
  await expect(page.locator('iframe, frame'), `${where} has a frame`).toHaveCount(0)
  await fitsItsWidth(page, where)
  const { violations } = await new AxeBuilder({ page })
    .setLegacyMode()
    .options({ resultTypes: ['violations'] })
    .withTags(tags)
    .analyze()
  const said = violations.map((one) => `${one.id}: ${one.nodes.map((node) => node.target.join(' ')).join(' | ')}`)
  expect(said, where).toEqual([])
}
