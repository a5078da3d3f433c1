import { describe, expect, it } from 'vitest'
import { commonWords } from '@/lib/core/access/common-words'
import { acceptablePassword, plainForms } from '@/lib/core/access/password'
import { isDate, isInOrder, isRepeated } from '@/lib/core/access/password-patterns'
import { demoPassword } from '@/lib/demo/people'

const own = ['Quennell Heads', 'Orla Quennell', 'orla']
const taken = (password: string): boolean => acceptablePassword(password, own).ok

describe('refused', () => {
  it.each([
    ...[
      'aaaaaaaa',
      '        ',
      'abababab',
      '12341234',
      'barnbarn',
      'letmein2026',
      'Letmein2026!',
      'P@ssw0rd',
      'p4ssw0rd!!',
    ],
    ...[
      'password',
      'PASSWORD123',
      '123password',
      '12345678',
      '87654321',
      'qwertyuiop',
      'abcd1234',
      '1q2w3e4r',
      'zxcvbnm1',
    ],
    ...[
      '1qaz2wsx',
      'asdfghjk',
      '24121999',
      '1999-12-24',
      '31.01.2001',
      'sunshine99',
      'summer2026',
      'Winter2025!',
      'dragon12',
    ],
    ...[
      'trustno1',
      'iloveyou2',
      'football1',
      'letmeinplease'.slice(0, 7) + '01',
      'hellodragon',
      'Quennell1',
      'orla2026',
      'OrlaQuennell',
    ],
    ...['quennellheads2026', 'brasstag1', 'machinist22', 'cylinderhead', 'short', 'seven77', 'ÄÄÄÄÄÄÄÄ'],
  ])('%s', (password) => {
    expect(taken(password)).toBe(false)
  })

  it('what is longer than is hashed', () => {
    expect(taken('a plum deck and a square hole '.repeat(6) + 'x'.repeat(21))).toBe(false)
  })
})

describe('taken, with nothing asked of digits, signs or capitals', () => {
  it.each([
    ...[
      demoPassword,
      'a plum deck and a square hole',
      'gruzbelt',
      'tunmarvo',
      'hat4rack',
      '83920174',
      'my quennell is a heron',
    ],
    ...[
      'correct horse battery staple',
      'seventeen wet boots',
      'gravel pit 9 o clock',
      'köhlerei am bach',
      'ふたつの古い工場の鍵',
    ],
  ])('%s', (password) => {
    expect(taken(password)).toBe(true)
  })

  it('two common words are too few below fifteen characters', () => {
    expect(acceptablePassword('hellodragon', []).ok).toBe(false)
    expect(acceptablePassword('strawberrychocolate', own).ok).toBe(true)
    expect(acceptablePassword('quennellmachinist', own).ok).toBe(false)
  })

  it('eight characters are the least; what is typed counts as it is, spaces too', () => {
    expect(taken('gruzbel')).toBe(false)
    expect(taken('gruz elt')).toBe(true)
    // Eight signs that are two units of text each.
    expect(acceptablePassword('𝄞𝄢𝄪𝄫𝅘𝅥𝅮', []).ok).toBe(false)
  })
})

/** What a guesser puts around a word, as the shop's password could have been set by anybody in a hurry. */
const ends = ['', '1', '12', '123', '1234', '!', '1!', '01', '99', '2024', '2025', '2026', '2026!', '@1', '.', '007']

it('at least three thousand of what is tried first are refused, and each of them is', () => {
  const guesses = [...commonWords].flatMap((word) =>
    ends.flatMap((end) => [`${word}${end}`, `${word[0]?.toUpperCase()}${word.slice(1)}${end}`]),
  )
  const long = [...new Set(guesses)].filter((guess) => guess.length >= 8)
  expect(long.length).toBeGreaterThan(3000)
  expect(long.filter(taken)).toEqual([])
})

it('the list is in small letters and at least three of them', () => {
  expect([...commonWords].filter((word) => !/^[a-z]{3,}$/.test(word))).toEqual([])
})

describe('the patterns by themselves', () => {
  it('in order, with one sign over at the most', () => {
    for (const text of ['abcdefgh', 'hgfedcba', '0987654321', 'qwerty1234', 'asdfgh12345x'])
      expect(isInOrder(text)).toBe(true)
    for (const text of ['ab12cd34', 'hat4rack', 'abcxy', 'gruzbelt'])
      expect([text, isInOrder(text)]).toEqual([text, false])
  })
  it('one piece over and over', () => {
    for (const text of ['zz', 'xyxy', 'abcabca', 'barnbarn']) expect(isRepeated(text)).toBe(true)
    for (const text of ['', 'z', 'barnbard', 'abcdeabcdf']) expect([text, isRepeated(text)]).toEqual([text, false])
  })
  it('a date, whichever way', () => {
    for (const text of ['24121999', '12241999', '19991224', '1999/12/24']) expect(isDate(text)).toBe(true)
    for (const text of ['24131999'.replace('13', '32'), '83920174', '1999122', '199912245', '18991224']) {
      expect([text, isDate(text)]).toEqual([text, false])
    }
  })
  it('letters that digits and signs stand for', () => {
    expect(plainForms('P@ssw0rd2026!')).toContain('password')
    expect(plainForms('$unsh1ne')).toContain('sunshine')
    expect(plainForms('1etmein')).toContain('letmein')
  })
})
