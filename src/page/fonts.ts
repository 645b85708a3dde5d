/** Source Serif 4, Source Sans 3 and Noto Sans Math, SIL Open Font License 1.1, from our own origin. */
const FACES = [
  {
    family: 'Sheet Serif',
    name: 'serif',
    files: '@fontsource-variable/source-serif-4',
    cut: 'wght-normal',
    weight: '200 900',
  },
  {
    family: 'Sheet Serif',
    name: 'serif-italic',
    files: '@fontsource/source-serif-4',
    cut: '400-italic',
    weight: '400',
  },
  {
    family: 'Sheet Sans',
    name: 'sans',
    files: '@fontsource-variable/source-sans-3',
    cut: 'wght-normal',
    weight: '200 900',
  },
];

/** The letters of each file of a face, as its package cuts them. */
const LETTERS = {
  'latin-ext':
    'U+0100-02BA, U+02BD-02C5, U+02C7-02CC, U+02CE-02D7, U+02DD-02FF, U+0304, U+0308, U+0329, U+1D00-1DBF, U+1E00-1E9F, U+1EF2-1EFF, U+2020, U+20A0-20AB, U+20AD-20C0, U+2113, U+2C60-2C7F, U+A720-A7FF',
  greek: 'U+0370-0377, U+037A-037F, U+0384-038A, U+038C, U+038E-03A1, U+03A3-03FF',
  latin:
    'U+0000-00FF, U+0131, U+0152-0153, U+02BB-02BC, U+02C6, U+02DA, U+02DC, U+0304, U+0308, U+0329, U+2000-206F, U+20AC, U+2122, U+2191, U+2193, U+2212, U+2215, U+FEFF, U+FFFD',
};

const cuts = FACES.flatMap(({ family, name, files, cut, weight }) =>
  Object.entries(LETTERS).map(([letters, range]) => ({
    file: `fonts/${name}-${letters}.woff2`,
    path: `${files}/files/${files.split('/')[1]}-${letters}-${cut}.woff2`,
    face: `font-family:"${family}";font-weight:${weight};font-style:${cut.split('-')[1]};unicode-range:${range}`,
  })),
);
const fonts = [
  ...cuts,
  {
    file: 'fonts/math.woff2',
    path: '@fontsource/noto-sans-math/files/noto-sans-math-latin-400-normal.woff2',
    face: 'font-family:"Sheet Maths"',
  },
];

/** Font files by the names the style sheet has for them, each a file of a package. */
export const FONTS: readonly (readonly [string, string])[] = fonts.map(({ file, path }) => [file, path]);

/** The style sheet that names them to a browser. */
export const FONT_STYLE = fonts
  .map(({ file, face }) => `@font-face{${face};src:url("${file}") format("woff2");font-display:swap}\n`)
  .join('');
