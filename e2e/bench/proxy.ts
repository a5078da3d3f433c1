import { createServer, request } from 'node:http'
import type { AddressInfo } from 'node:net'

export type Proxy = {
  readonly url: string
  readonly toNext: (urls: readonly string[]) => void
  readonly stop: () => void
}

/** What stands before several processes: each question goes to the next of them, with the address that was asked for. */
export async function startProxy(): Promise<Proxy> {
  let targets: readonly string[] = []
  let turn = 0
  const server = createServer((asked, answer) => {
    const { hostname, port } = new URL(targets[turn++ % targets.length] ?? '')
    const headers = { ...asked.headers, 'x-forwarded-for': asked.socket.remoteAddress ?? '' }
    const passed = request({ hostname, port, method: asked.method, path: asked.url, headers }, (given) => {
      answer.writeHead(given.statusCode ?? 502, given.headers)
      given.pipe(answer)
    })
    passed.on('error', () => answer.writeHead(502).end())
    asked.pipe(passed)
  })
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  const { port } = server.address() as AddressInfo
  return {
    url: `http://127.0.0.1:${port}`,
    toNext: (urls) => void (targets = urls),
    stop: () => {
      server.closeAllConnections()
      server.close()
    },
  }
}
