import { gzipSync } from 'node:zlib'
import { expect, test, type Page } from '@playwright/test'
import { choose, openStep, signIn, signInAtForm, tapAgain } from './person'
import { prepared } from './prepared'
import { settled } from './settled'

/** A tablet at the far end of the shop has a poor network: a station's page may load so much script, compressed. */
const mostBytes = 180_000

/** Scripts that a page had asked for when the first of `selector` stood there awake, compressed as the server would usually. */
async function scriptsOf(page: Page, address: string, selector: string): Promise<{ bytes: number; text: string }> {
  const bodies = new Map<string, Promise<Buffer>>()
  page.on('response', (response) => {
    if (response.request().resourceType() === 'script') bodies.set(response.url(), response.body())
  })
  await page.addInitScript((wanted) => {
    new MutationObserver((_changes, observer) => {
      if (!document.querySelector(wanted)) return
      performance.mark('stands')
      observer.disconnect()
    }).observe(document, { childList: true, subtree: true })
  }, selector)
  await page.goto(address)
  await page.locator(selector).first().waitFor()
  // A queue stands in the page itself: what it needs to go on is counted too, until the server has told the app of it.
  const asked = '/api/stations/'
  await page.waitForFunction(
    (part) => performance.getEntriesByType('resource').some(({ name }) => name.includes(part)),
    asked,
  )
  const later = await page.evaluate((part) => {
    const all = performance.getEntriesByType('resource') as PerformanceResourceTiming[]
    const told = all.find(({ name }) => name.includes(part))?.responseEnd ?? 0
    const stands = Math.max(performance.getEntriesByName('stands')[0]?.startTime ?? 0, told)
    return all.flatMap(({ name, startTime }) => (startTime > stands ? [name] : []))
  }, asked)
  page.removeAllListeners('response')
  const scripts = await Promise.all([...bodies].flatMap(([url, body]) => (later.includes(url) ? [] : [body])))
  return {
    bytes: scripts.reduce((sum, body) => sum + gzipSync(body).length, 0),
    text: scripts.map(String).join('\n'),
  }
}

test('a station’s queue and a step load little script, and none of what checks forms', async ({ browser }) => {
  const person = await browser.newPage()
  await signInAtForm(person, 'ines')
  await person.goto('/stations/measuring-bench')
  const step = await person.getByRole('region', { name: 'Ready' }).getByRole('link').first().getAttribute('href')
  const stands = { '/stations/measuring-bench': 'section[aria-label="Ready"] a', [step ?? '']: '[data-commit]' }
  for (const [address, first] of Object.entries(stands)) {
    // A page of its own, so that nothing is in its memory yet.
    const context = await browser.newContext({ storageState: await person.context().storageState() })
    const page = await context.newPage()
    const { bytes, text } = await scriptsOf(page, address, first)
    test.info().annotations.push({ type: 'compressed script', description: `${address}: ${bytes} bytes` })
    expect(bytes, address).toBeGreaterThan(100_000)
    expect(bytes, address).toBeLessThan(mostBytes)
    expect(text.includes('ZodError'), address).toBe(false)
    await context.close()
  }
  await person.close()
})

/** Three faces of the letters that English needs. */
const mostFaceBytes = 75_000

test('a page of many links fetches none of them ahead, and faces of the web only', async ({ page }) => {
  await signIn(page, 'tamsin')
  const ahead: string[] = []
  const faces: Promise<number>[] = []
  page.on('request', (request) => request.url().includes('_rsc=') && ahead.push(request.url()))
  page.on('response', (response) => {
    if (response.request().resourceType() === 'font') faces.push(response.body().then(({ length }) => length))
  })
  await page.goto('/counter')
  expect(await page.locator('a[href^="/jobs/"]').count()).toBeGreaterThan(5)
  // What is fetched ahead is asked for once the page has nothing else to do.
  await page.waitForLoadState('networkidle')
  expect(ahead).toEqual([])
  const bytes = (await Promise.all(faces)).reduce((sum, length) => sum + length, 0)
  expect(bytes).toBeGreaterThan(0)
  expect(bytes).toBeLessThan(mostFaceBytes)
})

test('a link opens its page without loading all anew, and in another tab when that is asked for', async ({ page }) => {
  await signIn(page, 'tamsin')
  const reactHints: string[] = []
  page.on('response', async (response) => {
    if (response.request().resourceType() !== 'script') return
    const text = await response.text().catch(() => '')
    if (text.includes('hydrateRoot')) reactHints.push(text.slice(0, 28))
  })
  await page.goto('/counter')
  await page.waitForLoadState('networkidle')
  await page.evaluate(() => Object.assign(window, { isStillThere: true }))
  const stays = () => page.evaluate(() => 'isStillThere' in window)
  const job = page.getByRole('rowheader').getByRole('link').first()
  const number = (await job.textContent()) ?? ''
  const other = page.context().waitForEvent('page')
  await job.click({ modifiers: ['ControlOrMeta'] })
  await expect((await other).getByRole('heading', { level: 1 })).toContainText(number)
  await expect(page).toHaveURL(/counter$/)
  await job.click()
  await expect(page).toHaveURL(new RegExp(`/jobs/${number}$`))
  await expect(page.getByRole('heading', { level: 1 })).toContainText(number)
  expect(await stays()).toBe(true)
  await page.goBack()
  await expect(page.getByRole('heading', { name: 'At the counter' })).toBeVisible()
  expect(await stays()).toBe(true)
  expect(reactHints, 'React is compiled while it comes, not while a finger waits').toEqual([
    '//# allFunctionsCalledOnLoad',
  ])
})

test('a form that comes later says when it cannot be fetched, and opens once the network is back', async ({ page }) => {
  await signIn(page, 'ines')
  await page.goto('/stations/measuring-bench')
  await page.getByRole('region', { name: 'Ready' }).getByRole('link').first().click()
  await page.waitForURL(/\/heads\//)
  // The form's script is refused from the first moment on, whether it is fetched ahead or at the tap.
  await page.route('**/*.js', async (route) => {
    const answer = await route.fetch()
    return (await answer.text()).includes('What was found') ? route.abort() : route.fulfill({ response: answer })
  })
  await page.reload()
  const finding = page.getByRole('button', { name: 'Finding', exact: true })
  await finding.waitFor()
  await finding.click()
  await expect(page.getByText('could not be fetched')).toBeVisible()
  await page.unrouteAll({ behavior: 'wait' })
  await tapAgain(finding)
  await expect(page.getByRole('dialog').getByLabel('What was found')).toBeFocused()
  await expect(page.getByText('could not be fetched')).toHaveCount(0)
})

test('a part that cannot be fetched leaves the step alone, and comes when the network is back', async ({ page }) => {
  await signIn(page, 'dov')
  // What was read stands below a ticked step: its script is refused, as without a network right after the page came.
  let refused = 0
  await page.route('**/*.js', async (route) => {
    const answer = await route.fetch()
    if (!(await answer.text()).includes('Corrected.')) {
      return route.fulfill({ response: answer })
    }
    refused += 1
    return route.abort()
  })
  await openStep(page, prepared('Oriel Pascoe').tag, 'Crack check')
  await choose(page, 'Crack check', 'No crack found')
  await page.getByRole('button', { name: 'Save and done' }).click()
  const done = page.getByRole('status').filter({ hasText: 'Done.' })
  await expect(done).toBeVisible()
  // The framework asks twice before it gives up.
  await expect.poll(() => refused).toBeGreaterThan(1)
  await settled(page)
  await expect(done).toBeVisible()
  const read = page.getByRole('region', { name: 'Readings' })
  await expect(read).toHaveCount(0)
  await page.unrouteAll({ behavior: 'wait' })
  await page.evaluate(() => dispatchEvent(new Event('online')))
  await expect(read).toContainText('No crack found')
})
