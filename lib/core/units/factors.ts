/** Exact by definition; written as what they are made of, each rounded to a double once. */
export const mmPerIn = 25.4
export const thouPerIn = 1000
/** (2.54 cm)³ = 16.387064 cm³. */
export const ccPerIn3 = 254 ** 3 / 100 ** 3
/** (25.4 mm)² = 645.16 mm². */
export const mm2PerIn2 = 254 ** 2 / 10 ** 2
/** (0.3048 m)³ = 28.316846592 l. */
export const litresPerFt3 = 3048 ** 3 / 10 ** 9
export const newtonsPerLbf = 4.4482216152605
/** Conventional, not exact: NIST SP 811. The 39.2 °F inch is 249.082 Pa, the 60 °F inch 248.84 Pa. */
export const paPerInH2O = 249.0889
/** Conventional, not exact: NIST SP 811. */
export const paPerInHg = 3386.389
