import { randomBytes } from 'node:crypto'
import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs'
import { createServer } from 'node:net'
import { join, resolve } from 'node:path'
import { makePrivate } from './private-files.mjs'
import { root } from './process.mjs'

/** What the two commands take from the environment. A demo is for this machine only, whatever else is set. */
export function settingsOf(mode, env = process.env) {
  const port = Number(env.PORT || 3000)
  if (!Number.isInteger(port) || port < 1 || port > 65535)
    throw new Error(`PORT is ${env.PORT}: it must be 1 to 65535.`)
  const host = (mode === 'shop' && env.BRASSTAG_HOST) || '127.0.0.1'
  const folder = env.BRASSTAG_DATA ? resolve(env.BRASSTAG_DATA) : join(root, mode === 'demo' ? 'data' : 'data-shop')
  const local = `http://127.0.0.1:${port}`
  const here = ['0.0.0.0', '::'].includes(host) ? local : `http://${host.includes(':') ? `[${host}]` : host}:${port}`
  return { mode, port, host, folder, here, address: env.BRASSTAG_URL || here }
}

/** The folder of the shop's data: nobody else on the machine looks into it. */
export function makeFolder({ folder }) {
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 })
    makePrivate(folder)
  } catch (error) {
    const why = noFolder[error.code] ?? error.message
    throw new Error(
      `The data folder ${folder} cannot be used: ${why}. Put that right, or name another with BRASSTAG_DATA.`,
    )
  }
}

const noFolder = {
  EROFS: 'its disk can only be read',
  EACCES: 'this user may not write there',
  EPERM: 'this user may not write there',
  ENOTDIR: 'a file stands in its place',
  EEXIST: 'a file stands in its place',
  ENOSPC: 'there is no room left on the disk',
}

/** Signs the sessions; made once, readable by the owner of the files alone. */
export function sessionSecret({ folder }) {
  const path = join(folder, 'session-secret')
  if (!existsSync(path)) {
    writeFileSync(`${path}.new`, randomBytes(48).toString('base64url'), { mode: 0o600 })
    renameSync(`${path}.new`, path) // whole or not at all
  }
  return readFileSync(path, 'utf8')
}

/** Asked before anything that takes long, so that a taken port is known at once. */
export function refuseTakenPort({ host, port }) {
  return new Promise((resolvePort, reject) => {
    const probe = createServer()
    probe.once('error', (error) =>
      reject(
        error.code === 'EADDRINUSE'
          ? new Error(`Port ${port} is in use. Stop what is there, or choose another: PORT=${port + 1} npm start`)
          : error,
      ),
    )
    probe.listen({ host, port, exclusive: true }, () => probe.close(() => resolvePort()))
  })
}
