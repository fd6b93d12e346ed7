import { radFromDeg } from '../../geometry/angle.ts';
import { pointing, type Vec3 } from '../../geometry/vec3.ts';
import { isPositive, keepFinite } from '../../units/finite.ts';
import { beamFallStops, edgeAngleDeg, type FlashHead, headFlux, intensityToward } from '../flash-head.ts';
import type { Lamp } from '../lamp.ts';
import { NEAREST_TO_LIGHT_M } from '../umbrella.ts';

/** Intensity over the axis's by the cosine of the off-axis angle, without building anything per call. */
function beamOf(head: FlashHead): (cosine: number) => number {
  const axis = intensityToward(head, 0);
  const edge = radFromDeg(edgeAngleDeg(head.zoomMm));
  if (!isPositive(axis) || !isPositive(edge)) return () => 0;
  // acos loses digits near the axis, but only the square of the angle counts there; exp is three times as fast
  // as a power of 2.
  return (cosine) => axis * Math.exp(-Math.LN2 * beamFallStops(Math.acos(Math.min(1, cosine)) / edge));
}

/**
 * A bare head as a lamp: a point with the beam of its zoom setting, E = I(θ)·cos i/d².
 * Nearer than 0.1 m counts as 0.1 m, where the head itself is as large.
 *
 * @param at its reflector [m]
 * @param facingDeg bearing of its axis [°]
 * @param tiltDeg of its axis, downward from level [°]
 * @returns the lamp at full power; its flux is the integral of its intensity over all directions
 * @source cie-inverse-square
 * @source assumption-beam
 */
export function bareLamp(head: FlashHead, at: Vec3, facingDeg: number, tiltDeg: number): Lamp {
  const axis = pointing(facingDeg, tiltDeg);
  const beam = beamOf(head);
  const { x: atX, y: atY, z: atZ } = at;
  const { x: axisX, y: axisY, z: axisZ } = axis;
  /** Light on an element whose normal has this much along the way from the lamp to it: −n·r [m]. */
  const light = (rx: number, ry: number, rz: number, facing: number): number => {
    const distance = Math.sqrt(rx * rx + ry * ry + rz * rz);
    const along = rx * axisX + ry * axisY + rz * axisZ;
    if (!(distance > 0) || !(along > 0) || !(facing > 0)) return 0;
    const asFar = Math.max(distance, NEAREST_TO_LIGHT_M);
    return keepFinite((beam(along / distance) * (facing / distance)) / (asFar * asFar));
  };
  return {
    ...at,
    radiusM: 0,
    flux: headFlux(head),
    on: (x, y, z, nx, ny, nz) => {
      const rx = x - atX;
      const ry = y - atY;
      const rz = z - atZ;
      return light(rx, ry, rz, -(nx * rx + ny * ry + nz * rz));
    },
    toward: (x, y, z) => {
      const rx = x - atX;
      const ry = y - atY;
      const rz = z - atZ;
      return light(rx, ry, rz, Math.sqrt(rx * rx + ry * ry + rz * rz));
    },
  };
}
