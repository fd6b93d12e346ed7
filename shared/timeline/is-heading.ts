const TITLE =
  /^(?:(?:the|our|wedding|reception|evening|final|draft|saturday|friday|sunday|day[- ]of)\s+)*(?:timeline|time\s?line|running order|order of (?:events|the (?:day|evening|night))|schedule|itinerary|programme?|agenda|ablauf(?:plan)?|tagesablauf|zeitplan)(?!\p{L}).{0,60}$/iu;
const COLUMN_WORD =
  /^(?:#|no\.?|nr\.?|time|start(?:s| time)?|begin(?:s|ning)?|from|end(?:s| time)?|until|to|duration|length|what|who|where|event|activity|item|moment|location|place|notes?|remarks?|zeit|uhrzeit|beginn|ende|was|wer|wo|programmpunkt|dauer)$/iu;

function columnsOf(body: string): string[] {
  return body
    .split(/[\t|,;]|\s{2,}/u)
    .map((column) => column.trim())
    .filter((column) => column !== '');
}

/** Whether a line is the first row of a table: names of columns and nothing else. */
export function isTableHead(body: string): boolean {
  const columns = columnsOf(body);
  return columns.length > 1 && columns.every((column) => COLUMN_WORD.test(column));
}

/** Whether a table's first row says that its first two times are a beginning and an end. */
export function headsRange(body: string): boolean {
  const columns = columnsOf(body).join(' ');
  return (
    isTableHead(body) && /\b(?:start|begin|from)/iu.test(columns) && /\b(?:end|until|to)/iu.test(columns)
  );
}

/**
 * Whether a line without a time is a heading: it ends in a colon, is marked as one, names the list, or is in capitals
 * where the other lines are not.
 */
export function isHeading(line: string, body: string, othersHaveSmallLetters: boolean): boolean {
  if (/^\s*#{1,6}\s/u.test(line) || /:\s*\**\s*$/u.test(body) || TITLE.test(body)) return true;
  return othersHaveSmallLetters && /\p{Lu}{2}/u.test(body) && !/\p{Ll}/u.test(body);
}
