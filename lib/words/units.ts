/** Units in words, as they are said aloud. */
const spoken: Readonly<Record<string, string>> = {
  in: 'inches',
  thou: 'thousandths of an inch',
  mm: 'millimetres',
  cc: 'cubic centimetres',
  'in²': 'square inches',
  '°': 'degrees',
  '°C': 'degrees Celsius',
  '°F': 'degrees Fahrenheit',
  inH2O: 'inches of water',
  inHg: 'inches of mercury',
  kPa: 'kilopascals',
  psi: 'pounds per square inch',
  cfm: 'cubic feet a minute',
  min: 'minutes',
  µin: 'millionths of an inch',
  lbf: 'pounds',
  'lbf/in': 'pounds per inch',
  'thou/cc': 'thousandths of an inch per cubic centimetre',
  '': 'none',
}

/** "thousandths of an inch" for thou; a unit without words stays as it is written. */
export const unitWords = (unit: string): string => spoken[unit] ?? unit
