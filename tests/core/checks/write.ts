import { writeFileSync } from 'node:fs'
import { checksPage, tablePath } from './table'

writeFileSync(tablePath, await checksPage())
