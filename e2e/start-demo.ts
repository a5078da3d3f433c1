import { startServer } from './server'

/** One demo shop for the whole run, fresh; the workers find it by its address. */
export default async function startDemo() {
  const server = await startServer('demo')
  process.env.BRASSTAG_E2E_URL = server.url
  return server.stop
}
