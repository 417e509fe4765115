/** A coil with an armature: what it draws before and after it seats, and where it pulls in and drops out. */
export interface CoilData {
  readonly ratedVolts: number;
  readonly ohms: number;
  readonly unsealedVoltAmps: number;
  readonly sealedVoltAmps: number;
  /** Fractions of rated volts. */
  readonly pickUp: number;
  readonly dropOut: number;
  /** From here up to pick-up an armature that is out buzzes without holding. */
  readonly chatterFrom: number;
}

export const ARMATURE = { out: 0, in: 1, chatter: 2 } as const;

/** Henries such that the coil draws `voltAmps` at rated volts and `hertz`, given its ohms. */
export function coilHenries(coil: CoilData, voltAmps: number, hertz: number): number {
  const impedance = (coil.ratedVolts * coil.ratedVolts) / voltAmps;
  const reactance = Math.sqrt(Math.max(impedance * impedance - coil.ohms * coil.ohms, 0.01));
  return reactance / (2 * Math.PI * hertz);
}

/** Where the armature stands next at these volts. */
export function nextArmature(coil: CoilData, armature: number, volts: number): number {
  const fraction = volts / coil.ratedVolts;
  if (armature === ARMATURE.in) return fraction < coil.dropOut ? ARMATURE.out : ARMATURE.in;
  if (fraction >= coil.pickUp) return ARMATURE.in;
  return fraction >= coil.chatterFrom ? ARMATURE.chatter : ARMATURE.out;
}
