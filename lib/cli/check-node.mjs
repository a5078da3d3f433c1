// Imported first, and written so that older versions can read it: they are to get a sentence, not a stack.
const needed = [20, 19]
const running = process.versions.node.split('.').map(Number)

if (running[0] < needed[0] || (running[0] === needed[0] && running[1] < needed[1])) {
  process.stderr.write(
    `Brasstag needs Node.js ${needed.join('.')} or newer; this is ${process.versions.node}. ` +
      'Install a newer one from nodejs.org or your package manager, then start again.\n',
  )
  process.exit(1)
}
