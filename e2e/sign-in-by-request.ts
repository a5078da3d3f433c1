import { request, type Cookie } from '@playwright/test'
import { demoPassword } from '../lib/demo/people'

/** Signs somebody of the demo in without a page, as the form does; gives the cookies that say so. */
export async function signInByRequest(url: string, name: string): Promise<Cookie[]> {
  const browser = await request.newContext({ baseURL: url, extraHTTPHeaders: { Origin: url } })
  try {
    const { csrfToken } = (await (await browser.get('/api/auth/csrf')).json()) as { csrfToken: string }
    const form = { csrfToken, name, password: demoPassword, json: 'true' }
    const answer = await browser.post('/api/auth/callback/credentials', { form })
    if (!answer.ok()) throw new Error(`${name} could not sign in: ${answer.status()}`)
    return (await browser.storageState()).cookies
  } finally {
    await browser.dispose()
  }
}
