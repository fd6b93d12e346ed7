import type { LightReport } from '../../../core/light/report/light-report.ts';
import { lengthLabel } from '../../../core/units/length.ts';
import type { Units } from '../../../shared/document/schema.ts';
import { spreadWords } from '../../words/frame-words.ts';
import { PATTERN, stopsWords } from '../../words/light-words.ts';
import { featuresBehind, ratioWords, seenWords, shadowWords } from '../../words/report-words.ts';

const stopsOr = (stops: number | null): string => (stops === null ? '–' : stopsWords(stops));
const chance = (value: number | null): string => (value === null ? '–' : `${Math.round(value * 100)} %`);

/** Two digits: batteries are not known better. */
function roughly(count: number): number {
  const size = 10 ** Math.max(0, Math.floor(Math.log10(Math.max(1, count))) - 1);
  return Math.floor(count / size) * size;
}

/** Every number of the sheet with its name: levels in stops over correct, then what hangs on places. */
function rowsOf(report: LightReport, units: Units): [string, string][] {
  const { subject, frame } = report;
  const behind = featuresBehind(report);
  const { depthOfField: sharp, softness } = subject;
  const recycle = report.units
    .filter((unit) => unit.recycleS !== null || unit.flashesLeft !== null)
    .map((unit) => {
      const again = unit.recycleS === null ? '' : ` ${unit.recycleS.toFixed(1)} s`;
      const left = unit.flashesLeft === null ? '' : `, at most some ${roughly(unit.flashesLeft)} flashes`;
      return `${unit.letter}${again}${left}`;
    });
  return [
    ['Subject, all light', spreadWords(subject.total)],
    ['Key alone', stopsOr(subject.keyStops)],
    ['Fill', stopsOr(subject.fillStops)],
    ['Rim', spreadWords(subject.rim)],
    ['Key side : shadow side', ratioWords(subject.keySideToShadowSide)],
    ['Background, its middle', spreadWords(frame.background)],
    ['Black in the picture', `${Math.round(frame.darkFraction * 100)} %`],
    ['Burnt out', `${Math.round(frame.brightFraction * 100)} %`],
    ...(frame.darkBehindFraction === null
      ? []
      : [
          ['Black behind the back light', `${Math.round(frame.darkBehindFraction * 100)} %`] as [
            string,
            string,
          ],
        ]),
    ['Wanted things behind', behind.wanted || 'none'],
    ['Unwanted things behind', behind.unwanted || 'none'],
    [
      'Lights',
      report.units
        .filter(({ seen }) => seen)
        .map(seenWords)
        .join('; '),
    ],
    ['Pattern', subject.pattern ? PATTERN[subject.pattern] : '–'],
    ['Shadow of the head', shadowWords(report, units)],
    [
      'Softness',
      softness === null
        ? '–'
        : `light ${softness.angularDiameterDeg.toFixed(0)}° wide, nose shadow ${softness.nosePenumbraMm.toFixed(0)} mm soft`,
    ],
    ['Across the group', subject.evennessStops === null ? '–' : `${subject.evennessStops.toFixed(1)} stops`],
    [
      'Sharp',
      sharp === null
        ? '–'
        : `${lengthLabel(sharp.nearM, units)} to ${sharp.farM === null ? 'infinity' : lengthLabel(sharp.farM, units)}`,
    ],
    [
      'Face clear of a full floor',
      `${chance(subject.clearFaceChance)}, with hands up ${chance(subject.clearOfHandsChance)}`,
    ],
    ['Ready again, at the wanted powers', recycle.join('; ') || 'not known'],
  ];
}

/** The numbers of the light sheet, each beside its name. */
export function LevelsTable({ report, units }: { report: LightReport; units: Units }) {
  return (
    <table class="levels">
      <caption>Stops over correct, with one standard deviation</caption>
      <tbody>
        {rowsOf(report, units).map(([name, value]) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td>{value}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
