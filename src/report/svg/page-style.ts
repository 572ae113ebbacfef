/**
 * Colours of the page, each with at least 4.5:1 against its ground where text is drawn in it and
 * 3:1 where it is a mark (WCAG 2.2, 1.4.3 and 1.4.11). Checked by a test.
 */
export const PALETTES = {
  light: {
    ground: '#faf8f3',
    card: '#ffffff',
    ink: '#22262b',
    quiet: '#5b636c',
    hair: '#d9d5ca',
    line: '#11586b',
    dot: '#6d8f99',
    band: '#e9dfc2',
    accent: '#8a3d12',
  },
  dark: {
    ground: '#15181b',
    card: '#1d2125',
    ink: '#eceae4',
    quiet: '#a5adb5',
    hair: '#363c42',
    line: '#7cc4d6',
    dot: '#75949d',
    band: '#3b3626',
    accent: '#eba876',
  },
} as const;

const variables = (palette: Readonly<Record<string, string>>): string =>
  Object.entries(palette)
    .map(([name, value]) => `--${name}:${value}`)
    .join(';');

/** The one style sheet of the page. */
export const PAGE_STYLE = `
:root{color-scheme:light dark;${variables(PALETTES.light)}}
@media (prefers-color-scheme:dark){:root{${variables(PALETTES.dark)}}}
*{box-sizing:border-box}
body{margin:0 auto;max-width:74rem;padding:1.5rem 1rem 3rem;background:var(--ground);color:var(--ink);
font:1rem/1.5 system-ui,sans-serif}
header p{color:var(--quiet);margin:0}
h1{font-size:1.75rem;line-height:1.2;margin:.1rem 0 1rem}
h2{font-size:1.2rem;margin:2.5rem 0 .25rem}
h3{font-size:1rem;margin:0}
.about{color:var(--quiet);margin:0 0 .75rem;max-width:44rem}
.verdict{border-left:.3rem solid var(--accent);padding:.1rem 0 .1rem .9rem;font-size:1.15rem;margin:0;max-width:44rem}
.findings{padding-left:1.2rem;max-width:44rem}
.findings li{margin:.35rem 0}
small{color:var(--quiet);display:block}
dl{display:grid;grid-template-columns:repeat(auto-fit,minmax(9.5rem,1fr));gap:.75rem;margin:1.5rem 0 0}
dl div,figure{background:var(--card);border:1px solid var(--hair);border-radius:.5rem;padding:.75rem .9rem}
dt{color:var(--quiet);font-size:.9rem}
dd{margin:0}
dd b{display:block;font-size:1.5rem;line-height:1.25;font-variant-numeric:tabular-nums}
.pictures,.pair{display:grid;gap:.75rem;align-items:start}
.pictures{grid-template-columns:repeat(auto-fill,minmax(min(100%,20rem),1fr))}
.pair{grid-template-columns:repeat(auto-fill,minmax(min(100%,30rem),1fr))}
figure{margin:0;min-width:0}
figcaption{display:flex;justify-content:space-between;gap:.5rem;flex-wrap:wrap}
figcaption span{color:var(--quiet)}
svg{display:block;width:100%;height:auto;margin:.25rem 0}
.across{stroke:var(--hair)}
.floor{stroke:var(--quiet)}
.label{fill:var(--quiet);font-size:12px}
.value{fill:var(--ink);font-size:13px;font-weight:600;paint-order:stroke;stroke:var(--card);stroke-width:4px;stroke-linejoin:round}
.line{fill:none;stroke:var(--line);stroke-width:2;stroke-linejoin:round}
.dot{fill:var(--dot)}
.last{fill:var(--line)}
.bar{fill:var(--line)}
.band{fill:var(--band)}
.edge{stroke:var(--accent);stroke-width:.75}
.mark{stroke:var(--accent);stroke-dasharray:5 4}
details{font-size:.9rem}
summary{cursor:pointer;color:var(--quiet);padding:.3rem 0}
.scroll{overflow-x:auto}
table{border-collapse:collapse;font-variant-numeric:tabular-nums}
th,td{text-align:right;padding:.15rem .6rem .15rem 0;border-bottom:1px solid var(--hair);white-space:nowrap}
th:first-child,td:first-child{text-align:left}
footer{margin-top:3rem;color:var(--quiet);max-width:44rem}
caption{text-align:left;color:var(--quiet)}
@media print{:root{color-scheme:light;${variables(PALETTES.light)}}
details{display:none}figure,dl div,li{break-inside:avoid}h2,h3{break-after:avoid}}
`.trim();
