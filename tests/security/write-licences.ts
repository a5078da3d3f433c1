import { writeFileSync } from 'node:fs'
import { licencesPage, licencesPath } from './licences'

writeFileSync(licencesPath, licencesPage())
