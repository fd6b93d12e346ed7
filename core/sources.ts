/**
 * Where the laws and numbers of core come from: reference id → full citation. Docstrings cite the id
 * (`@source iso2720`). "Own" entries are this project's choices; "from memory" marks a detail that was not
 * seen in print.
 */
export const SOURCES = {
  'a-star':
    'Hart, Nilsson and Raphael, A Formal Basis for the Heuristic Determination of Minimum Cost Paths, IEEE Transactions on Systems Science and Cybernetics 4(2), 1968, 100–107 (from memory).',
  'ada-clear-width':
    'US Department of Justice, 2010 ADA Standards for Accessible Design, 403.5.1 with its exception: 36 in (915 mm) clear, 32 in (815 mm) for at most 24 in (610 mm).',
  'ada-door-force':
    'US Department of Justice, 2010 ADA Standards for Accessible Design, 404.2.9: interior hinged doors open with at most 5 lbf (22.2 N).',
  'ada-headroom':
    'US Department of Justice, 2010 ADA Standards for Accessible Design, 307.4: vertical clearance 80 in (2030 mm); the same in International Building Code 1003.3.1.',
  'angle-of-view':
    'Angle of view of a rectilinear lens at infinity, 2·atan(d/2f); table of field of view for common focal lengths on 36 × 24 mm (Photons to Photos, "Field of View Values for Common Focal Lengths").',
  apex: 'APEX system of photographic exposure (ASA PH2.12-1961, ANSI PH2.7-1973) with the speed constant 1/3.125 of Exif 2.3; values as computed by GNU units 2.22, definitions.units, "Photographic Exposure Value".',
  'asc-lighting-ratio':
    'Lighting ratio as the American Society of Cinematographers defines it, (key + fill) : fill; encyclopedia article "Lighting ratio" with worked examples.',
  'asce7-wind':
    'ASCE/SEI 7, 26.10: velocity pressure q = 0.613·V² Pa (V in m/s), all factors 1; EN 1991-1-4, 4.5 gives ½·ρ·V² with ρ = 1.25 kg/m³.',
  'assumption-average-room':
    'Own assumption: the room that a printed guide number holds is worth half a stop (common practice, no published figure found).',
  'assumption-beam':
    'Own assumption: a bare head’s beam is round, one stop less at the corner of the frame of its zoom setting than on the axis, falling as 2^−(θ/θedge)² up to there and cut off past it by 16 stops per θedge.',
  'assumption-card':
    'Own assumption: a bounce card is an even disc as wide as the card, and what passes it keeps the beam of the head.',
  'assumption-face':
    'Own assumption: a face that looks at the camera has two level sides, each 45° off the camera axis.',
  'assumption-person':
    'Own assumption: the subject is a ball of 0.12 m about the eyes on a capsule 0.44 m wide that stands on the floor; skin gives back 0.3 of the light, clothes 0.18.',
  'assumption-umbrella':
    'Own assumption: a white shoot-through umbrella lets half of the head’s light out forward and throws about a third back, each as an evenly lit Lambertian disc.',
  'bayes-normal':
    'Linear model with normal prior and noise: posterior precision = sum of precisions, K = P·h/(hᵀPh + R) (any textbook of Bayesian statistics or of the Kalman filter, from memory).',
  beaufort: 'World Meteorological Organization, Beaufort scale in m/s, mean speed 10 m above open ground.',
  'brick-wood-reflectances':
    'Diffuse reflectances of building surfaces, public table: wood light 30–60 %, dark 10–15 %; concrete 20–30 %; new red brick 10–15 %.',
  'camera-left':
    'Stage directions: house (camera) left is the left of the viewer, stage left that of the performer facing the audience.',
  cholesky:
    'Cholesky factorisation of a symmetric positive definite matrix and its inverse from the factor (textbooks of numerical linear algebra, from memory).',
  'cie-inverse-square':
    'CIE S 017 International Lighting Vocabulary, 17-25-104 (inverse square law); IES lighting definitions 9.1.1 (within 1 % beyond five times the source’s largest dimension).',
  'circular-statistics':
    'Mean direction as the direction of the mean unit vector (circular statistics; textbook definition, from memory).',
  'cosine-power-lobe':
    'Lobe of the form I·cos^m φ with the flux 2πI/(m + 1) (photometry textbooks, from memory; the integral is elementary). Own choice where a measured axis is brighter than a Lambertian source could be.',
  'design-table-reflectances':
    'Architectural design table of reflectances: white latex paint 0.84, plywood 0.58, white marble 0.60, light curtains 0.30–0.50, painted floor 0.10.',
  'drag-tables':
    'Drag coefficients of an open hemisphere, hollow to the wind 1.42 (another table 1.33), thin disc 1.1: tables of standard fluid-mechanics textbooks; S. F. Hoerner, Fluid-Dynamic Drag.',
  'ev-table':
    'Encyclopedia article "Exposure value", table 3: EV at ISO 100 against luminance (K = 12.5) and illuminance (C = 250), after ANSI PH2.7-1986.',
  'f-number-scale': 'f-number scale in third stops: exact 2^(i/6); nominal figures as engraved by the trade.',
  'fabric-from-memory':
    'Reflectance of carpet (light 0.20–0.30, dark 0.05–0.10) and black curtain (0.02–0.05), from memory.',
  'fabric-reflectances': 'Data of a membrane maker: white coated roof membranes reflect 72–75 % of sunlight.',
  'flash-energy':
    'Energy stored and spent by a flash goes with its light, so recycle time and drain go with the power fraction (trade knowledge, from memory; no published table found).',
  'gauss-legendre':
    'Gauss–Legendre quadrature with two points, ½ ± √3/6 (textbooks of numerical analysis, from memory).',
  'guidance-convention':
    'Own convention: plan with y down, bearing clockwise from plan-up, words in eight sectors, half-way clockwise, words land within 0.5 m; landmark first after A. May and others 2003 and T. Ross and others 2004.',
  'heckbert-projective':
    'Projective map of one quadrilateral onto another by way of the unit square (P. S. Heckbert, Fundamentals of Texture Mapping and Image Warping, 1989; from memory).',
  'howell-element-disc':
    'J. R. Howell, A Catalog of Radiation Heat Transfer Configuration Factors: differential planar element to a disk, parallel (coaxial and offset) and perpendicular to it (section numbers from memory).',
  hyperfocal:
    'Encyclopedia article "Hyperfocal distance", H = f²/(N·c) + f with the worked example 50 mm, f/8, c = 0.03 mm; near and far limits of a thin lens (optics textbooks, from memory).',
  'ibc-corridor':
    'International Building Code, Table 1020.2: corridor width 44 in (1118 mm), 36 in for fewer than about 50 people (number of the table from memory).',
  'ibc-table-aisle':
    'International Building Code 2018, 1029.13.1 (1018.2 in the 2015 edition): at tables, aisle width is measured from a line 19 in (483 mm) off the table’s edge.',
  'iec60335-stability':
    'IEC 60335-1, 20.1: appliances do not overturn on a plane inclined at 10°. A yardstick here: not a standard for stands.',
  'iec62368-stability':
    'IEC 62368-1:2018, static stability: 10° tilt, or 13 % of the weight applied horizontally at up to 1.5 m. A yardstick here: not a standard for stands.',
  'integrating-sphere':
    'Integrating sphere: illuminance by interreflection E = Φ/S·ρ/(1 − ρ); the closed cavity of CIE 171:2006 states the same (from memory).',
  iso12232:
    'ISO 12232, Digital still cameras — Determination of exposure index, ISO speed ratings, standard output sensitivity: mid-grey (18 %, sRGB level 118) at a focal-plane exposure of 10/S lx·s (10/S and 118 from memory).',
  iso1230:
    'ISO 1230:2007, Photography — Determination of flash guide numbers: guide number = f-number × distance; it grows as the root of speed and of light.',
  iso2720:
    'ISO 2720:1974, General purpose photographic exposure meters (photoelectric type): N²/t = E·S/C and L·S/K, C 240–400 (250 common, flat receptor), K 10.6–13.4 (12.5 common).',
  iso516: 'ISO 516, Camera shutters — Timing: nominal exposure times (from memory); exact values 2^(k/3).',
  'iso-speed-scale':
    'ISO 5800 and ISO 12232: arithmetic speeds in third stops (from memory); exact values 100·2^(k/3).',
  iso9358:
    'ISO 9358, Veiling glare of image forming systems: a black spot in an evenly bright surround; photographic lenses about 0.5–3 % (figures from memory).',
  'joseph-form':
    'Joseph form of the covariance update, (I − KH)·P·(I − KH)ᵀ + K·R·Kᵀ (P. D. Joseph; textbooks of the Kalman filter, from memory).',
  'lambert-contour':
    'J. H. Lambert, Photometria (1760), contour formula for the light of an evenly bright polygon; J. R. Howell, A Catalog of Radiation Heat Transfer Configuration Factors: element to polygon (edition details from memory).',
  'lambert-disc':
    'Illuminance on the axis of a Lambertian disc, E = πL·R²/(R² + d²) (photometry textbooks; agrees with the five-times rule of IES definition 9.1.1).',
  'lamp-maker-reflectances':
    'Lamp maker’s lighting encyclopedia, reflectances: white 0.8, plaster 0.8, maple and birch 0.6, light oak 0.4, dark oak 0.2, concrete 0.3, red brick 0.2, light grey 0.4, mid grey 0.2.',
  'levenberg-marquardt':
    'Nonlinear least squares by damped Gauss–Newton steps (K. Levenberg 1944, D. W. Marquardt 1963; from memory).',
  navedtra14209:
    'US Navy, NAVEDTRA 14209, Photography (Basic): two equal flashes double the exposure; flash exposure does not depend on the shutter up to sync speed; makers’ guide numbers assume an average subject in a room with light ceilings of 10 ft (Automatic Electronic Flash Units).',
  'nist-sp-811': 'NIST Special Publication 811: the international foot is 0.3048 m exactly.',
  'osha-exit-route':
    'US 29 CFR 1910.37(a)(3): exit routes free and unobstructed; no materials or equipment placed in them, permanently or temporarily.',
  'osha-exit-width': 'US 29 CFR 1910.36(g)(2): exit access at least 28 in (711 mm) wide at all points.',
  'own-estimate': 'Own estimate, to be corrected by use.',
  'own-rule': 'Own rule of this project, where no published number was found.',
  pacing:
    'Pacing as surveyors do it: 1/50 to 1/100 by somebody experienced on open level ground (public surveying reference).',
  'poisson-crowd':
    'Poisson point process: the chance that an area A holds none of n points per unit area is exp(−n·A) (probability textbooks, from memory).',
  'portrait-patterns':
    'Portrait lighting teaching pages: loop 20–50° aside and 25–60° up, Rembrandt about 45° and 45°, split 90°, butterfly 0° and 25–70° up; key usually 45° aside and up.',
  radiosity:
    'Net-radiation method for diffuse enclosures, B = ρE + ρFB with A·F symmetric and rows of F summing to 1 (R. Siegel and J. R. Howell, Thermal Radiation Heat Transfer; C. M. Goral and others, 1984; from memory).',
  rec709: 'ITU-R BT.709: luminance = 0.2126·R + 0.7152·G + 0.0722·B of linear light.',
  'rim-geometry': 'Plane geometry: lowest point of a tilted circle.',
  'shadow-geometry': 'Plane geometry: straight rays and similar triangles.',
  'skin-placement':
    'Common practice: pale skin is placed about a stop over mid-grey, medium skin half a stop over, dark skin half a stop under (no published figure found).',
  srgb: 'IEC 61966-2-1, sRGB: 12.92·v up to 0.0031308, else 1.055·v^(1/2.4) − 0.055 (from memory).',
  'standard-gravity': 'BIPM, The International System of Units: standard gravity 9.80665 m/s².',
  'statics-tipping':
    'Statics of a rigid body on level feet: it tips about the line through two neighbouring feet when the moment about it vanishes. Checked against a direct three-foot reaction solve.',
  'step-ratio':
    'Step length over body height 0.413–0.415 (consumer pedometer sources only); measured samples 0.366–0.433 (PMC2943048, table 2).',
  'sutherland-hodgman': 'I. E. Sutherland and G. W. Hodgman, Reentrant polygon clipping, 1974 (from memory).',
  'textbook-geometry':
    'Analytic geometry of the plane and of space: sides of lines, products of vectors, cutting by half-planes.',
  'two-point-scale':
    'Scale of a picture from two points: length over distance, and √2·σ/D for two ends that are each off by σ (error propagation; textbooks of surveying, from memory).',
  'van-oosterom':
    'A. van Oosterom and J. Strackee, The solid angle of a plane triangle, IEEE Trans. Biomed. Eng., 1983 (from memory).',
  'visibility-graph':
    'Lozano-Pérez and Wesley, An Algorithm for Planning Collision-Free Paths among Polyhedral Obstacles, Communications of the ACM 22(10), 1979, 560–570: shortest ways bend at corners of obstacles grown by the walker (from memory).',
} as const satisfies Record<string, string>;
