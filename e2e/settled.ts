import type { Page } from '@playwright/test'

/**
 * Whatever the page was about to do has begun: it had nothing to do for twice a moment. A request that it would send of
 * itself has been sent by then, and its listener has been told, since both come along the same way.
 */
export const settled = (page: Page): Promise<void> =>
  page.evaluate(async () => {
    const idle = () => new Promise((resolve) => requestIdleCallback(resolve))
    const turn = () => new Promise((resolve) => setTimeout(resolve, 50))
    for (let time = 0; time < 2; time++) {
      await turn()
      await idle()
    }
  })
