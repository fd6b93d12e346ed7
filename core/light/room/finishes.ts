/** A surface's named diffuse reflectance [1]. */
export type Finish = { readonly name: string; readonly reflectance: number };

/**
 * Finishes of floors, walls, ceilings, tents and drapes, brightest first. Real ones differ by a fifth and more;
 * a test frame settles what the room does.
 *
 * @source lamp-maker-reflectances (white plaster, light wood as light oak, red brick, mid and light grey)
 * @source design-table-reflectances (white paint, white marble, plywood, light curtain, painted floor)
 * @source brick-wood-reflectances (concrete, dark wood, each the middle of its range)
 * @source fabric-reflectances (white tent cloth, from its reflectance for sunlight)
 * @source fabric-from-memory (carpets, black drape)
 */
export const FINISHES = [
  { name: 'White paint', reflectance: 0.84 },
  { name: 'White plaster', reflectance: 0.8 },
  { name: 'White tent cloth', reflectance: 0.73 },
  { name: 'White marble', reflectance: 0.6 },
  { name: 'Plywood', reflectance: 0.58 },
  { name: 'Light wood', reflectance: 0.4 },
  { name: 'Light curtain', reflectance: 0.4 },
  { name: 'Light grey paint', reflectance: 0.4 },
  { name: 'Concrete', reflectance: 0.25 },
  { name: 'Light carpet', reflectance: 0.25 },
  { name: 'Red brick', reflectance: 0.2 },
  { name: 'Mid-grey paint', reflectance: 0.2 },
  { name: 'Mid-grey carpet', reflectance: 0.15 },
  { name: 'Dark wood', reflectance: 0.12 },
  { name: 'Painted floor', reflectance: 0.1 },
  { name: 'Dark carpet', reflectance: 0.08 },
  { name: 'Black drape', reflectance: 0.03 },
] as const satisfies readonly Finish[];
