import { chromium, type Page } from '@playwright/test'
import { signIn } from '../person'
import { systemChromium } from '../../tests/setup/browser'
import { startServer } from '../server'
import { median, type Figure } from '../../tests/bench/measure'

const slowdown = 4
const moves = 60

type Move = { readonly thumbMs: number; readonly answerMs: number }

/**
 * Milliseconds of each move, measured on the page: until the slider itself says the new figure, and until the whole answer
 * (section, figures, what follows) stands there, as the main thread was busy with it.
 */
async function moved(page: Page): Promise<readonly Move[]> {
  return page.getByRole('slider').evaluate(async (slider, count) => {
    const range = slider as HTMLInputElement
    const set = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')?.set
    const section = range.closest('section')
    const description = section?.querySelector('svg desc')
    const times: Move[] = []
    for (let move = 0; move < count; move++) {
      const drawn = new Promise<void>((resolve) => {
        const watch = new MutationObserver(() => {
          watch.disconnect()
          resolve()
        })
        if (description) watch.observe(description, { characterData: true, childList: true, subtree: true })
        else resolve()
      })
      set?.call(range, String((move * 7 + 1) % (Number(range.max) + 1)))
      const start = performance.now()
      range.dispatchEvent(new Event('input', { bubbles: true }))
      // React answers an input within the same task or the microtasks after it.
      await Promise.resolve()
      const thumbMs = performance.now() - start
      await drawn
      times.push({ thumbMs, answerMs: performance.now() - start })
      await new Promise((resolve) => setTimeout(resolve, 20))
    }
    return times
  }, moves)
}

/** A step of the cut bench's slider in Chromium, with the processor slowed to a quarter. Needs a build. */
export async function browserFigures(): Promise<Figure[]> {
  const server = await startServer('demo')
  const browser = await chromium.launch({
    executablePath: systemChromium(),
    args: ['--no-sandbox', '--disable-gpu'],
  })
  try {
    const page = await browser.newPage({ baseURL: server.url })
    await signIn(page, 'tamsin')
    await page.goto('/cut-bench')
    await page.getByLabel('Casting', { exact: true }).selectOption({ label: 'Harrow wedge 64' })
    await page.getByLabel('Target, cc').fill('58')
    await page.getByRole('slider').waitFor()
    const session = await page.context().newCDPSession(page)
    await session.send('Emulation.setCPUThrottlingRate', { rate: slowdown })
    const times = (await moved(page)).slice(moves / 3)
    const figure = (work: string, of: (move: Move) => number): Figure => {
      const measured = median(times.map(of))
      return { work, measured, unit: 'ms', goal: '< 4, processor slowed 4 times', met: measured < 4 }
    }
    return [
      figure('cut bench, a step of the slider under the finger', ({ thumbMs }) => thumbMs),
      figure('cut bench, a step of the slider until the whole answer stands there', ({ answerMs }) => answerMs),
    ]
  } finally {
    await browser.close()
    await server.stop()
  }
}
