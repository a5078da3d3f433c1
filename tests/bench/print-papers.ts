import { paperFigures } from './papers'

process.stdout.write(JSON.stringify(await paperFigures()))
