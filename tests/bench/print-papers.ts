import { paperFigures } from './spec-sheet'

process.stdout.write(JSON.stringify(await paperFigures()))
