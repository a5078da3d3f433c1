import { writeFileSync } from 'node:fs'
import { functionsPage, pagePath } from './page'

writeFileSync(pagePath, await functionsPage())
