import type { Page } from '@playwright/test'

/** Holds the scripts of a page back until what it gives back is called. */
export async function withoutScripts(page: Page): Promise<() => void> {
  let letGo = () => {}
  const held = new Promise<void>((resolve) => (letGo = resolve))
  await page.route('**/_next/static/**/*.js', async (route) => {
    await held
    await route.continue()
  })
  return letGo
}
