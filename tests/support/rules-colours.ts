import { lineAt, withoutComments } from './rules-code.ts';

/** The colour keywords of CSS Color 4, section 6.1 (transparent and currentColor are no colours of their own). */
const NAMED =
  'aliceblue antiquewhite aqua aquamarine azure beige bisque black blanchedalmond blue blueviolet brown burlywood cadetblue chartreuse chocolate coral cornflowerblue cornsilk crimson cyan darkblue darkcyan darkgoldenrod darkgray darkgreen darkgrey darkkhaki darkmagenta darkolivegreen darkorange darkorchid darkred darksalmon darkseagreen darkslateblue darkslategray darkslategrey darkturquoise darkviolet deeppink deepskyblue dimgray dimgrey dodgerblue firebrick floralwhite forestgreen fuchsia gainsboro ghostwhite gold goldenrod gray green greenyellow grey honeydew hotpink indianred indigo ivory khaki lavender lavenderblush lawngreen lemonchiffon lightblue lightcoral lightcyan lightgoldenrodyellow lightgray lightgreen lightgrey lightpink lightsalmon lightseagreen lightskyblue lightslategray lightslategrey lightsteelblue lightyellow lime limegreen linen magenta maroon mediumaquamarine mediumblue mediumorchid mediumpurple mediumseagreen mediumslateblue mediumspringgreen mediumturquoise mediumvioletred midnightblue mintcream mistyrose moccasin navajowhite navy oldlace olive olivedrab orange orangered orchid palegoldenrod palegreen paleturquoise palevioletred papayawhip peachpuff peru pink plum powderblue purple rebeccapurple red rosybrown royalblue saddlebrown salmon sandybrown seagreen seashell sienna silver skyblue slateblue slategray slategrey snow springgreen steelblue tan teal thistle tomato turquoise violet wheat white whitesmoke yellow yellowgreen'.replaceAll(
    ' ',
    '|',
  );

const HEX = '#(?:[0-9a-f]{8}|[0-9a-f]{6}|[0-9a-f]{3,4})(?![\\w-])';
const FUNCTION = '(?<![\\w-])(?:rgba?|hsla?|hwb|lab|lch|oklab|oklch|color)\\(\\s*[\\d.+-]';
const LITERAL = new RegExp(`${HEX}|${FUNCTION}`, 'gi');
const LITERAL_OR_NAME = new RegExp(`${HEX}|${FUNCTION}|(?<![\\w-])(?:${NAMED})(?![\\w-])`, 'gi');
/** Attributes and style properties of a drawing that take a colour. */
const PAINTED = new RegExp(
  `\\b(?:fill|stroke|color|background|backgroundColor|stopColor|borderColor|bgcolor)\\b["']?\\s*[=:]\\s*\\{?\\s*["'\`](?:${NAMED})["'\`]`,
  'gi',
);

function blank(text: string): string {
  return text.replace(/[^\n]/g, ' ');
}

/** A sheet with comments, quotes, selectors and references to tokens blanked out: values alone are left. */
function valuesOf(css: string): string {
  return css
    .replace(/\/\*[\s\S]*?\*\/|"[^"\n]*"|'[^'\n]*'|url\([^)]*\)/g, blank)
    .replace(/[^{};]*\{/g, blank)
    .replace(/--[\w-]+/g, blank)
    .replace(/[\w-]+\s*:/g, blank);
}

function found(path: string, text: string, searched: string, pattern: RegExp): string[] {
  return [...searched.matchAll(pattern)].map((match) => `${path}:${lineAt(text, match.index)} ${match[0]}`);
}

/**
 * Colours that are written down in a file of the client instead of being taken from a token.
 *
 * @returns one line per colour, with its place
 */
export function colourLiterals(path: string, text: string): string[] {
  if (path.endsWith('.css')) return found(path, text, valuesOf(text), LITERAL_OR_NAME);
  const searched = path.endsWith('.html')
    ? text.replace(/<!--[\s\S]*?-->/g, blank)
    : withoutComments(path, text);
  return [...found(path, text, searched, LITERAL), ...found(path, text, searched, PAINTED)];
}
