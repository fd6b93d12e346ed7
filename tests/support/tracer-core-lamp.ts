import type { Lamp } from '../../core/light/lamp.ts';
import type { TracerLamp } from './tracer-lamp.ts';

/** A light of the tracer, dressed as a light of core: what the room does with light is tested apart from lamps. */
export function coreLampOf(lamp: TracerLamp, radiusM: number): Lamp {
  const { places, intensity, flux } = lamp;
  const mean = (axis: 0 | 1 | 2) => places.reduce((sum, place) => sum + place[axis], 0) / places.length;
  const [x, y, z] = [mean(0), mean(1), mean(2)];
  const on = (px: number, py: number, pz: number, nx: number, ny: number, nz: number): number => {
    let sum = 0;
    for (const place of places) {
      const [dx, dy, dz] = [px - place[0], py - place[1], pz - place[2]];
      const square = dx * dx + dy * dy + dz * dz;
      const lands = -(nx * dx + ny * dy + nz * dz);
      if (lands <= 0 || square === 0) continue;
      const long = Math.sqrt(square);
      sum += (intensity([dx / long, dy / long, dz / long]) * lands) / (square * long);
    }
    return sum / places.length;
  };
  const toward = (px: number, py: number, pz: number): number => {
    const long = Math.hypot(x - px, y - py, z - pz) || 1;
    return on(px, py, pz, (x - px) / long, (y - py) / long, (z - pz) / long);
  };
  return { x, y, z, radiusM, flux, on, toward };
}
