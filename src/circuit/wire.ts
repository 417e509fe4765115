/** Copper wire: diameter by ASTM B258, conductivity and temperature coefficient by IEC 60028. */

/** Ω·mm²/m of annealed copper at 20 °C (IEC 60028). */
const OHM_SQUARE_MM_PER_METRE = 1 / 58;
/** Change of resistance per kelvin, of that at 20 °C (IEC 60028). */
const PER_KELVIN = 0.00393;
const MM_PER_INCH = 25.4;
const METRES_PER_FOOT = 0.3048;

/** Diameter in millimetres of solid wire of a gauge (ASTM B258: 36 AWG is 0.005 in, and 39 steps up are 92 times that). */
export function wireMillimetres(awg: number): number {
  return 0.005 * 92 ** ((36 - awg) / 39) * MM_PER_INCH;
}

/**
 * Resistance of one conductor of solid copper, one way.
 * @param awg gauge, usually 10 … 24
 * @param feet length
 * @param celsius temperature of the copper, −50 … 150
 */
export function wireOhms(awg: number, feet: number, celsius = 20): number {
  const squareMillimetres = (Math.PI / 4) * wireMillimetres(awg) ** 2;
  const at20 = (OHM_SQUARE_MM_PER_METRE / squareMillimetres) * feet * METRES_PER_FOOT;
  return at20 * (1 + PER_KELVIN * (celsius - 20));
}
