import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { columnsModule } from './columns.mjs'
import { installed, root, run } from './process.mjs'

const generated = join(root, 'prisma', 'generated')
const mark = join(generated, 'made-from')
const twin = join(generated, 'postgresql.prisma')
const columns = join(generated, 'columns.ts')

/** Makes the PostgreSQL schema from the one model file, both clients, and the list of columns. Nothing is done when nothing changed. */
export async function generate({ force = false } = {}) {
  const schema = readFileSync(join(root, 'prisma', 'schema.prisma'), 'utf8')
  const fingerprint = createHash('sha256').update(schema).update(prismaVersion()).digest('hex')
  if (!force && isUpToDate(fingerprint)) return
  mkdirSync(generated, { recursive: true })
  rmSync(mark, { force: true })
  writeFileSync(twin, postgresqlSchema(schema))
  writeFileSync(columns, columnsModule(schema))
  for (const file of [join(root, 'prisma', 'schema.prisma'), twin]) await generateClient(file)
  writeFileSync(mark, fingerprint)
}

const isUpToDate = (fingerprint) =>
  existsSync(mark) &&
  readFileSync(mark, 'utf8') === fingerprint &&
  existsSync(columns) &&
  ['sqlite', 'postgresql'].every((provider) => existsSync(join(generated, provider, 'client.ts')))

const prismaVersion = () => JSON.parse(readFileSync(installed('prisma', 'package.json'), 'utf8')).version

/** The same models: only the datasource's provider and the folder of the client differ. */
export function postgresqlSchema(schema) {
  const twinText = schema
    .replace('"./generated/sqlite"', '"./postgresql"')
    .replace(/(datasource db \{[^}]*provider = )"sqlite"/, '$1"postgresql"')
  if (!twinText.includes('"./postgresql"') || !twinText.includes('"postgresql"')) {
    throw new Error('prisma/schema.prisma does not look as lib/cli/generate.mjs expects.')
  }
  return twinText
}

/** The engine binary that the command would fetch is not needed to generate: any executable stands in for it. */
const generateClient = (file) =>
  run(process.execPath, [installed('prisma', 'build', 'index.js'), 'generate', '--schema', file], {
    env: { ...process.env, PRISMA_SCHEMA_ENGINE_BINARY: process.execPath, PRISMA_HIDE_UPDATE_MESSAGE: '1' },
    keep: 'quiet',
  })

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  await generate({ force: process.argv.includes('--force') })
}
