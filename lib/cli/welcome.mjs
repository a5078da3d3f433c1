const column = (rows, key) => Math.max(...rows.map((row) => row[key].length))

function people({ people: rows, password }) {
  const [signIn, name, roles] = [column(rows, 'signIn'), column(rows, 'name'), column(rows, 'roles')]
  const lines = rows.map(
    (row) => `    ${row.signIn.padEnd(signIn)}  ${row.name.padEnd(name)}  ${row.roles.padEnd(roles)}  PIN ${row.pin}`,
  )
  return [
    `  Sign in as one of these; the password of each is: ${password}`,
    ...lines,
    '  The PINs are for a device that the owner has enrolled as a tablet: Back room, Tablets.',
  ]
}

const firstOwner = (code, address) => [
  `  Nobody can sign in yet. Open ${address}/setup and enter this code: ${code}`,
  '  It works once, and the next start shows a new one.',
]

/** The last thing said: where to go, as whom, and how to stop. */
export function welcome({ mode, folder, address, here }, { demo, ownerCode }) {
  const lines = [
    '',
    `Brasstag is running${mode === 'demo' ? ' with the demo shop' : ''}: ${address}`,
    ...(address === here ? [] : [`  listening on ${here}`]),
    ...(demo ? people(demo) : []),
    ...(ownerCode ? firstOwner(ownerCode, address) : []),
    `  Data: ${folder}`,
    '  Stop with Ctrl+C.',
    '',
  ]
  return lines.join('\n')
}
