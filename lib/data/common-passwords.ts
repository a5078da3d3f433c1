/** Passwords that are tried first, from memory; all of at least eight characters, lower case. */
export const commonPasswords = new Set([
  'password', 'password1', 'password12', 'password123', 'passw0rd', 'p@ssword', 'p@ssw0rd', '12345678', '123456789',
  '1234567890', '0123456789', '87654321', '11111111', '00000000', '12341234', '11223344', '88888888', 'qwertyui',
  'qwertyuiop', 'qwerty123', 'qwerty1234', 'asdfghjk', 'asdfghjkl', 'zxcvbnm1', '1q2w3e4r', '1q2w3e4r5t', '1qaz2wsx',
  'iloveyou', 'sunshine', 'princess', 'football', 'baseball', 'basketball', 'superman', 'trustno1', 'welcome1',
  'welcome123', 'letmein1', 'letmein123', 'changeme', 'changeme1', 'changeme123', 'abcd1234', 'abc12345', 'abcdefgh',
  'administrator', 'admin123', 'admin1234', 'master123', 'michelle', 'jennifer', 'computer', 'internet', 'whatever',
  'starwars', 'cylinder', 'cylinderhead', 'brasstag', 'brasstag1', 'brasstag123', 'machinist', 'workshop', 'engine123',
]) // prettier-ignore
