import { execFileSync } from 'node:child_process'

/** Every file that git knows of, or would: what is ignored stays out. */
export const gitFiles = (root: string): string[] =>
  execFileSync('git', ['ls-files', '-z', '--cached', '--others', '--exclude-standard'], { cwd: root, encoding: 'utf8' })
    .split('\0')
    .filter((file) => file !== '')
