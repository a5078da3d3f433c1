import { expect, type Page } from '@playwright/test'
import axe from 'axe-core'

const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']

export async function fitsItsWidth(page: Page, where = page.url()): Promise<void> {
  const sideways = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)
  expect(sideways, `${where} sticks out sideways`).toBeLessThanOrEqual(0)
}

/**
 * Nothing sticks out sideways, and axe finds nothing. No page of ours has frames, so axe is run in the page itself: its
 * own way through a browser looks into each frame, and takes twice as long.
 */
export async function isSound(page: Page, where = page.url()): Promise<void> {
  await expect(page.locator('iframe, frame'), `${where} has a frame`).toHaveCount(0)
  await fitsItsWidth(page, where)
  await page.evaluate(axe.source)
  const violations = await page.evaluate(async (values) => {
    const { axe: inPage } = globalThis as unknown as { axe: typeof import('axe-core') }
    const found = await inPage.run({ runOnly: { type: 'tag', values }, resultTypes: ['violations'] })
    return found.violations.map(({ id, nodes }) => ({ id, at: nodes.map(({ target }) => target.join(' ')) }))
  }, tags)
  const said = violations.map(({ id, at }) => `${id}: ${at.join(' | ')}`)
  expect(said, where).toEqual([])
}
