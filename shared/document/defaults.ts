import type { Entry } from './schema.ts';

/** What a night is read as where nobody has said (SPEC DOC17). */
export const DEFAULT_ROOF: Entry<'room/roof'> = { kind: 'flat' };

/**
 * 70/50/20 % for ceiling, walls and floor: the reflectances that lighting design takes for a room of which nothing
 * is known (common practice; the trio that utilisation-factor tables begin with, from memory).
 */
export const DEFAULT_FINISHES: Entry<'room/finishes'> = { ceiling: 0.7, walls: 0.5, floor: 0.2 };

/** Subject right, background a stop and a half under mid-grey, rim a stop over the subject, two people wide. */
export const DEFAULT_WISH: Entry<'moment/wish'> = {
  subjectStops: 0,
  backgroundStops: -1.5,
  rimStops: 1,
  groupWidthM: 1.2,
};

export const DEFAULT_CAMERA_LIGHT: Entry<'moment/camera-light'> = { use: 'off', powerStops: -6 };
