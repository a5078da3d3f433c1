import { createWriteStream } from 'node:fs'
import { join, resolve } from 'node:path'
import { faultWords } from './backup/fault-words'
import { dataFolderAsked } from './backup/which-folder'
import { writeExport } from './export/write-export'

/**
 * `npm run export <file>`: everything as CSV and JSON with its dictionary, photos and papers, in one archive. `-` is for the
 * server: the archive on stdout, how far it is on stderr.
 */
process.on('SIGTERM', () => process.stdout.destroy()) // whoever read it has gone: the end is tidied up
const [to = ''] = process.argv.slice(2)
process.umask(0o077)
try {
  if (to === '') throw new Error('name the file: npm run export everything.tar.gz')
  const data = dataFolderAsked()
  const target = to === '-' ? process.stdout : createWriteStream(resolve(to), { flags: 'wx', mode: 0o600 })
  const url = process.env.DATABASE_URL || `file:${join(data, 'brasstag.db')}`
  await writeExport({ url, data, progress: (done, of) => process.stderr.write(`${done}/${of}\n`) }, target)
} catch (error) {
  process.stderr.write(`Nothing was taken along: ${faultWords(error)}.\n`)
  process.exitCode = 1
}
