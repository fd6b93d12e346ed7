/**
 * Where the laws and numbers of core come from: reference id → full citation. Docstrings cite the id
 * (`@source iso2720`). "Own" entries are this project's choices; "from memory" marks a detail that was not
 * seen in print.
 */
export const SOURCES = {
  'ada-clear-width':
    'US Department of Justice, 2010 ADA Standards for Accessible Design, 403.5.1 with its exception: 36 in (915 mm) clear, 32 in (815 mm) for at most 24 in (610 mm).',
  'ada-door-force':
    'US Department of Justice, 2010 ADA Standards for Accessible Design, 404.2.9: interior hinged doors open with at most 5 lbf (22.2 N).',
  'ada-headroom':
    'US Department of Justice, 2010 ADA Standards for Accessible Design, 307.4: vertical clearance 80 in (2030 mm); the same in International Building Code 1003.3.1.',
  'angle-of-view':
    'Angle of view of a rectilinear lens at infinity, 2·atan(d/2f); table of field of view for common focal lengths on 36 × 24 mm (Photons to Photos, "Field of View Values for Common Focal Lengths").',
  apex: 'APEX system of photographic exposure (ASA PH2.12-1961, ANSI PH2.7-1973) with the speed constant 1/3.125 of Exif 2.3; values as computed by GNU units 2.22, definitions.units, "Photographic Exposure Value".',
  'asce7-wind':
    'ASCE/SEI 7, 26.10: velocity pressure q = 0.613·V² Pa (V in m/s), all factors 1; EN 1991-1-4, 4.5 gives ½·ρ·V² with ρ = 1.25 kg/m³.',
  'assumption-beam':
    'Own assumption: a bare head lights the frame of its zoom setting, one stop less at the corner than on the axis, falling as 2^−(θ/θedge)².',
  'assumption-umbrella':
    'Own assumption: a white shoot-through umbrella lets half of the head’s light out forward, as an evenly lit Lambertian disc.',
  beaufort: 'World Meteorological Organization, Beaufort scale in m/s, mean speed 10 m above open ground.',
  'camera-left':
    'Stage directions: house (camera) left is the left of the viewer, stage left that of the performer facing the audience.',
  'cie-inverse-square':
    'CIE S 017 International Lighting Vocabulary, 17-25-104 (inverse square law); IES lighting definitions 9.1.1 (within 1 % beyond five times the source’s largest dimension).',
  'circular-statistics':
    'Mean direction as the direction of the mean unit vector (circular statistics; textbook definition, from memory).',
  'drag-tables':
    'Drag coefficients of an open hemisphere, hollow to the wind 1.42 (another table 1.33), thin disc 1.1: tables of standard fluid-mechanics textbooks; S. F. Hoerner, Fluid-Dynamic Drag.',
  'ev-table':
    'Encyclopedia article "Exposure value", table 3: EV at ISO 100 against luminance (K = 12.5) and illuminance (C = 250), after ANSI PH2.7-1986.',
  'f-number-scale': 'f-number scale in third stops: exact 2^(i/6); nominal figures as engraved by the trade.',
  'guidance-convention':
    'Own convention: plan with y down, bearing clockwise from plan-up, words in eight sectors, half-way clockwise, words land within 0.5 m; landmark first after A. May and others 2003 and T. Ross and others 2004.',
  'howell-element-disc':
    'J. R. Howell, A Catalog of Radiation Heat Transfer Configuration Factors: differential planar element to a disk, parallel (coaxial and offset) and perpendicular to it (section numbers from memory).',
  'ibc-corridor':
    'International Building Code, Table 1020.2: corridor width 44 in (1118 mm), 36 in for fewer than about 50 people (number of the table from memory).',
  'ibc-table-aisle':
    'International Building Code 2018, 1029.13.1 (1018.2 in the 2015 edition): at tables, aisle width is measured from a line 19 in (483 mm) off the table’s edge.',
  'iec60335-stability':
    'IEC 60335-1, 20.1: appliances do not overturn on a plane inclined at 10°. A yardstick here: not a standard for stands.',
  'iec62368-stability':
    'IEC 62368-1:2018, static stability: 10° tilt, or 13 % of the weight applied horizontally at up to 1.5 m. A yardstick here: not a standard for stands.',
  iso1230:
    'ISO 1230:2007, Photography — Determination of flash guide numbers: guide number = f-number × distance; it grows as the root of speed and of light.',
  iso2720:
    'ISO 2720:1974, General purpose photographic exposure meters (photoelectric type): N²/t = E·S/C and L·S/K, C 240–400 (250 common, flat receptor), K 10.6–13.4 (12.5 common).',
  iso516: 'ISO 516, Camera shutters — Timing: nominal exposure times (from memory); exact values 2^(k/3).',
  'iso-speed-scale':
    'ISO 5800 and ISO 12232: arithmetic speeds in third stops (from memory); exact values 100·2^(k/3).',
  'lambert-disc':
    'Illuminance on the axis of a Lambertian disc, E = πL·R²/(R² + d²) (photometry textbooks; agrees with the five-times rule of IES definition 9.1.1).',
  navedtra14209:
    'US Navy, NAVEDTRA 14209, Photography (Basic): two equal flashes double the exposure; flash exposure does not depend on the shutter up to sync speed.',
  'nist-sp-811': 'NIST Special Publication 811: the international foot is 0.3048 m exactly.',
  'osha-exit-route':
    'US 29 CFR 1910.37(a)(3): exit routes free and unobstructed; no materials or equipment placed in them, permanently or temporarily.',
  'osha-exit-width': 'US 29 CFR 1910.36(g)(2): exit access at least 28 in (711 mm) wide at all points.',
  'own-estimate': 'Own estimate, to be corrected by use.',
  'own-rule': 'Own rule of this project, where no published number was found.',
  'portrait-patterns':
    'Portrait lighting teaching pages: loop 20–50° aside and 25–60° up, Rembrandt about 45° and 45°, split 90°, butterfly 0° and 25–70° up; key usually 45° aside and up.',
  'rim-geometry': 'Plane geometry: lowest point of a tilted circle.',
  'standard-gravity': 'BIPM, The International System of Units: standard gravity 9.80665 m/s².',
  'statics-tipping':
    'Statics of a rigid body on level feet: it tips about the line through two neighbouring feet when the moment about it vanishes. Checked against a direct three-foot reaction solve.',
  'step-ratio':
    'Step length over body height 0.413–0.415 (consumer pedometer sources only); measured samples 0.366–0.433 (PMC2943048, table 2).',
} as const satisfies Record<string, string>;
