import { describe, expect, it } from 'vitest';
import {
  ambientStops,
  apertureValue,
  brightnessValue,
  ev100FromIlluminance,
  ev100Of,
  flashStops,
  INCIDENT_C,
  illuminanceFromEv100,
  luminanceFromEv100,
  REFLECTED_K,
  speedValue,
  sumStops,
  timeValue,
} from '../../core/light/exposure.ts';
import { F_NUMBERS, ISO_SPEEDS, type Nominal, SHUTTER_TIMES } from '../../core/units/nominal.ts';
import { expectClose } from './expect-close.ts';
import adding from './fixtures/adding-light.json' with { type: 'json' };
import apex from './fixtures/apex-table.json' with { type: 'json' };
import practice from './fixtures/common-practice.json' with { type: 'json' };
import evTable from './fixtures/ev-table.json' with { type: 'json' };
import worked from './fixtures/exposure-worked.json' with { type: 'json' };
import sequences from './fixtures/sequences.json' with { type: 'json' };

function labelled(list: readonly Nominal[], label: string): number {
  const entry = list.find((candidate) => candidate.label === label);
  if (!entry) throw new Error(`no entry is labelled ${label}`);
  return entry.exact;
}

const APEX = { Av: apertureValue, Tv: timeValue, Sv: speedValue, Bv: brightnessValue } as const;

describe('exposure against published values', () => {
  it.each(worked.settings)('settings: $what', (row) => {
    const ev100 = ev100Of(row);
    if (row.ev100 !== undefined) expectClose(ev100, row.ev100, row.tolerance, row.what);
    if (row.luminance !== undefined)
      expectClose(luminanceFromEv100(ev100 ?? Number.NaN), row.luminance, row.tolerance, row.what);
    if (row.lux !== undefined)
      expectClose(illuminanceFromEv100(ev100 ?? Number.NaN), row.lux, row.tolerance, row.what);
  });

  it.each(worked.evOfLux)('EV of $lux lx', ({ lux, ev100, tolerance }) => {
    expectClose(ev100FromIlluminance(lux), ev100, tolerance, 'EV100');
  });

  it.each(worked.apex)('APEX $value of $input', ({ value, input, expected, tolerance }) => {
    expectClose(APEX[value as keyof typeof APEX](input), expected, tolerance, value);
  });

  it('π·K/C is the reflectance that meters assume', () => {
    const { expected, tolerance } = worked.reflectance;
    expectClose((Math.PI * REFLECTED_K) / INCIDENT_C, expected, tolerance, 'reflectance');
  });

  it.each(evTable.rows)('table: EV $ev100', (row) => {
    expect(Math.abs(luminanceFromEv100(row.ev100) - row.luminance)).toBeLessThanOrEqual(
      0.6 * row.luminanceDigit,
    );
    expect(Math.abs(illuminanceFromEv100(row.ev100) - row.lux)).toBeLessThanOrEqual(0.6 * row.luxDigit);
  });

  it.each(apex.aperture)('APEX Av %i is nominal f/%s, exactly %d', (value, nominal, exact) => {
    expectClose(labelled(F_NUMBERS, `f/${nominal}`), Number(exact), 'three-digits', 'f-number');
    expectClose(apertureValue(labelled(F_NUMBERS, `f/${nominal}`)), Number(value), 'exact', 'Av');
  });

  it.each(apex.time)('APEX Tv %i is nominal %s, exactly %d s', (value, nominal, exact) => {
    expectClose(labelled(SHUTTER_TIMES, String(nominal)), Number(exact), 'exact', 'time');
    expectClose(timeValue(labelled(SHUTTER_TIMES, String(nominal))), Number(value), 'exact', 'Tv');
  });

  it.each(apex.speed)('APEX Sv %i is ISO %d', (value, iso) => {
    expectClose(speedValue(iso ?? 0), value ?? 0, 'exact', 'Sv');
  });

  it.each(adding.sums)(
    'ambient $ambient and flash $flash make $total',
    ({ ambient, flash, total, tolerance }) => {
      expectClose(sumStops([ambient, flash]), total, tolerance, 'sum');
    },
  );

  it.each(adding.ratios)('fill $fillUnderKeyStops stops under the key: $ratio to 1', (row) => {
    const sum = sumStops([0, -row.fillUnderKeyStops]) ?? Number.NaN;
    expectClose(2 ** (sum + row.fillUnderKeyStops), row.ratio, row.tolerance, 'ratio');
  });

  it('flash and ambient use one constant: H = E·t gives the same stops', () => {
    const exposure = { iso: 1600, fNumber: 2, shutterS: 1 / 128 };
    const stops = flashStops(illuminanceFromEv100(4) * exposure.shutterS, exposure);
    expectClose(stops, ambientStops(4, exposure) ?? Number.NaN, 'exact', 'stops');
  });

  it.each(practice.reception.shutterLabels)('common practice: an EV 4 room at ISO 1600, f/2, %s', (label) => {
    const { iso, fNumber, ev100, underLeast, underMost } = practice.reception;
    const under = -(ambientStops(ev100, { iso, fNumber, shutterS: labelled(SHUTTER_TIMES, label) }) ?? 0);
    expect(under).toBeGreaterThanOrEqual(underLeast - 1e-9);
    expect(under).toBeLessThanOrEqual(underMost);
  });
});

describe('scales against published values', () => {
  it('has the published f-numbers, all of them and in order', () => {
    expect(F_NUMBERS.map((entry) => entry.label)).toEqual(sequences.fNumbers.map(([label]) => `f/${label}`));
  });

  it('has the nominal times and speeds, all of them and in order', () => {
    expect(SHUTTER_TIMES.map((entry) => entry.label.replace(' s', ''))).toEqual(sequences.nominalTimes);
    expect(ISO_SPEEDS.map((entry) => entry.label)).toEqual(sequences.nominalSpeeds);
  });

  it.each(sequences.fNumbers)('f/%s is %d exactly', (label, exact) => {
    expectClose(labelled(F_NUMBERS, `f/${label}`), Number(exact), sequences.fTolerance, 'f-number');
  });

  it.each(sequences.times)('%s s is 1/%d exactly', (label, denominator) => {
    const time = labelled(SHUTTER_TIMES, String(label));
    expectClose(1 / time, Number(denominator), sequences.timeTolerance, 'denominator');
  });

  it.each(sequences.speeds)('ISO %s is %d exactly', (label, exact) => {
    expectClose(labelled(ISO_SPEEDS, String(label)), Number(exact), sequences.speedTolerance, 'speed');
  });

  it('labels stray by at most 0.141 stop, and f/1.2 strays most', () => {
    const strays = F_NUMBERS.map(({ label, exact }) => ({
      label,
      stops: 2 * Math.log2(Number(label.slice(2)) / exact),
    })).sort((a, b) => Math.abs(b.stops) - Math.abs(a.stops));
    const { label, stops, tolerance } = sequences.worstLabel;
    expect(strays[0]?.label).toBe(label);
    expectClose(strays[0]?.stops ?? null, stops, tolerance, label);
  });
});
