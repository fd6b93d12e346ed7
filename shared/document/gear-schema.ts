import * as z from 'zod/mini';
import { name, powerStops, within } from './fields.ts';

/** What every flash can say of itself, on a stand or on the camera. */
const flashFields = {
  name,
  guideNumberM: within(1, 200),
  zoomMm: within(8, 400),
  leastPowerStops: powerStops,
  /**
   * What the guide number means: `printed` in a leaflet, for an average room with a light ceiling, or `open`, the
   * flash alone with nothing around it. Absent: nobody has said.
   */
  guideNumberKind: z.exactOptional(z.enum(['printed', 'open'])),
  /** From one full-power flash to the next. */
  recycleS: z.exactOptional(within(0.01, 120)),
  /** How many full-power flashes one set of batteries gives. */
  flashesFull: z.exactOptional(within(1, 100000)),
};

/** The light stops that a piece of cloth or card costs, as measured. */
const lossStops = within(0, 6);

/** One piece of gear by its kind. */
export const gearSchema = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('head'), ...flashFields, massKg: within(0.05, 20) }),
  z.object({
    kind: z.literal('umbrella'),
    name,
    diameterM: within(0.2, 3),
    forwardFraction: within(0.01, 1),
    /** Share of the head's light that goes back into the room. */
    backFraction: z.exactOptional(within(0, 1)),
    lossStops: z.exactOptional(lossStops),
    massKg: within(0.05, 10),
  }),
  z.object({
    kind: z.literal('stand'),
    name,
    legs: within(3, 5),
    legRadiusM: within(0.1, 2),
    massKg: within(0.2, 40),
    centreM: within(0.05, 4),
    topM: within(0.5, 8),
    ballastKg: within(0, 100),
  }),
  /** The flash on the camera. */
  z.object({ kind: z.literal('flash'), ...flashFields }),
  /** The bounce card behind it. */
  z.object({
    kind: z.literal('card'),
    name,
    widthM: within(0.02, 1),
    lossStops,
    /** Share of the flash's light that passes the card and goes up. */
    upFraction: within(0, 1),
  }),
]);
