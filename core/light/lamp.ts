/**
 * A light in the room, as everything that computes with light sees it: what it throws on a small flat
 * element, at FULL power, with nothing in the way. Power is a factor on all of it, occlusion is the room's.
 * Numbers go in singly, not as vectors: these are called some ten thousand times for one moved light.
 */
export interface Lamp {
  /** Its centre [m] */
  readonly x: number;
  readonly y: number;
  readonly z: number;
  /** Radius of what shines [m]: 0 for a bare head */
  readonly radiusM: number;
  /** All light of one flash at full power, forward and back [lm·s] */
  readonly flux: number;
  /**
   * Light on a flat element at (x, y, z) [m] with the unit normal (nx, ny, nz).
   * @returns H [lx·s]; 0 from behind
   */
  on(x: number, y: number, z: number, nx: number, ny: number, nz: number): number;
  /**
   * Light on an element at (x, y, z) [m] that faces the lamp, as a meter does.
   * @returns H [lx·s]
   */
  toward(x: number, y: number, z: number): number;
}
