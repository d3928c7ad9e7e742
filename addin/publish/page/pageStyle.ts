/** How the page looks: on a screen from 320 px wide, light and dark, and on paper. No address is named in it. */
export function pageStyle(columns: number, paper: "A4" | "Letter"): string {
  const isWide = columns > 7;
  return `${screen}@page{size:${paper} ${isWide ? "landscape" : "portrait"};margin:12mm}${print}`;
}

const screen = `
:root{color-scheme:light dark;--ground:#fbf9f4;--surface:#fff;--band:#f4f0e6;--line:#d9d3c5;--text:#26292e;--quiet:#5c6068;--chalk:#1f5fa8;--thread:#b3261e;--brass:#8a6100;--leaf:#2c6e49}
@media (prefers-color-scheme:dark){:root{--ground:#1f2124;--surface:#2a2c30;--band:#34373c;--line:#54575d;--text:#f4f1ea;--quiet:#b9b6ae;--chalk:#82aedb;--thread:#ff9c94;--brass:#e9be5c;--leaf:#86cfa4}}
*,*::before,*::after{box-sizing:border-box}
html{background:var(--ground);color:var(--text);font:100%/1.5 system-ui,"Segoe UI",Roboto,"Helvetica Neue",Arial,"Noto Sans",sans-serif;font-variant-numeric:tabular-nums;-webkit-text-size-adjust:100%}
body{margin:0 auto;max-width:75rem;padding:0 16px 48px;overflow-wrap:break-word}
header{padding:32px 0 16px;border-bottom:3px double var(--line)}
h1{margin:0;font-size:clamp(1.6rem,1.2rem + 2vw,2.4rem);line-height:1.2;font-weight:650;text-wrap:balance}
h2{margin:40px 0 12px;font-size:1.3rem;line-height:1.3}
h3{margin:0;font-size:1rem;line-height:1.4}
p{margin:8px 0;max-width:68ch}
a{color:var(--chalk)}
.quiet,small{color:var(--quiet);font-size:.875rem}
.maker{margin:4px 0 0;color:var(--quiet)}
nav ul{display:flex;flex-wrap:wrap;gap:4px 20px;margin:12px 0 0;padding:0;list-style:none}
nav a{display:inline-block;padding:5px 0}
.card{background:var(--surface);border:1px solid var(--line);border-radius:8px;padding:12px 16px}
.tools{display:flex;flex-wrap:wrap;gap:8px 16px;align-items:end;margin:0 0 12px}
label{display:block;font-weight:600;font-size:.875rem}
input,select,button{font:inherit;font-variant-numeric:inherit;color:inherit;background:var(--surface);border:1px solid var(--quiet);border-radius:6px;min-height:40px;padding:4px 10px;max-width:100%}
button{cursor:pointer;color:var(--chalk);border-color:var(--chalk);font-weight:600}
:focus-visible{outline:3px solid var(--chalk);outline-offset:2px}
.scroll{overflow-x:auto;background:var(--surface);border:1px solid var(--line);border-radius:8px;position:relative}
table{border-collapse:separate;border-spacing:0;min-width:100%}
.chart th,.chart td{padding:7px 12px;text-align:end;vertical-align:top;border-bottom:1px solid var(--line);white-space:nowrap}
.chart tbody tr:last-child>*{border-bottom:0}
.chart thead th{vertical-align:bottom;white-space:normal;background:var(--band);border-bottom:2px solid var(--line);line-height:1.25;min-width:5.5rem;font-size:.875rem}
.chart th:first-child{text-align:start;position:sticky;inset-inline-start:0;background:var(--surface);max-width:42vw;min-width:7rem;white-space:normal;border-inline-end:1px solid var(--line);z-index:1}
.chart thead th:first-child{background:var(--band)}
.chart tbody th{font-weight:600}
.chart tbody th small{display:block;font-weight:400}
.chart tbody tr:nth-child(even)>*{background:color-mix(in srgb,var(--band) 45%,var(--surface))}
.unit{display:block;font-weight:400;color:var(--quiet)}
td .second{display:block;color:var(--quiet);font-size:.875rem}
.none{color:var(--quiet)}
sup{line-height:0}
td sup a{padding:0 4px;color:var(--brass);font-weight:700}
.remarks{margin:10px 0 0;padding:0;list-style:none;color:var(--quiet);font-size:.875rem;display:flex;flex-wrap:wrap;gap:2px 24px}
.remarks sup{color:var(--brass);font-weight:700}
.remarks li:target{outline:2px solid var(--brass);outline-offset:3px;border-radius:3px}
th button{all:unset;cursor:pointer;font-weight:600;border-radius:4px;display:inline-block;padding:2px 0;text-decoration:underline;text-decoration-color:var(--line);text-underline-offset:3px}
th button:hover{text-decoration-color:currentColor}
th button:focus-visible{outline:3px solid var(--chalk);outline-offset:2px}
th[aria-sort] button::after{content:" ▲";color:var(--chalk)}
th[aria-sort=descending] button::after{content:" ▼"}
.bodies{margin:0;padding:0;list-style:none;display:grid;gap:8px}
.bodies li{border-inline-start:3px solid var(--line);padding:2px 12px;max-width:75ch}
.patterns{display:grid;grid-template-columns:repeat(auto-fill,minmax(min(100%,23rem),1fr));gap:12px;align-items:start}
.code{color:var(--quiet);font-weight:400}
.about{margin:2px 0 8px;color:var(--quiet);font-size:.875rem}
.answers{margin:0;padding:0;list-style:none;display:grid;gap:6px}
.answers>li{padding-inline-start:1.5em;position:relative}
.sign{position:absolute;inset-inline-start:0;font-weight:700;width:1.2em;text-align:center}
.kind{font-weight:650}
.fits .sign,.fits .kind{color:var(--leaf)}
.change .sign,.change .kind,.unsure .sign,.unsure .kind{color:var(--brass)}
.not .sign,.not .kind{color:var(--thread)}
.answers ul{margin:2px 0 0;padding-inline-start:0;list-style:none;font-size:.875rem}
.answers li li{padding:1px 0}
.why{color:var(--quiet)}
.buyer{display:grid;gap:16px}
.fields{display:grid;align-items:end;grid-template-columns:repeat(auto-fill,minmax(min(100%,10.5rem),1fr));gap:10px 16px}
.fields input,.fields select,#figure{width:100%}
.fields>div:has(.problem:not([hidden])){align-self:start}
.fields [aria-invalid=true]{border-color:var(--thread);border-width:2px}
.problem{color:var(--thread);font-size:.8125rem;margin:2px 0 0}
details{margin-top:4px}
summary{cursor:pointer;font-weight:600;padding:6px 0}
.result{display:grid;gap:16px}
.count{display:flex;flex-wrap:wrap;gap:4px 20px;margin:0;padding:0;list-style:none;font-weight:600}
.count .sign{position:static;margin-inline-end:4px}
.drawing{max-width:420px;margin:0;width:100%}
.drawing svg{width:100%;height:auto;display:block}
.drawing text{fill:var(--text);font-size:13px}
.drawing .body{fill:var(--surface);stroke:var(--quiet);stroke-width:1.5}
.drawing .tape{stroke:var(--chalk);stroke-width:2.5;fill:none}
.drawing .lead{stroke:var(--line);stroke-width:1}
.outlines{display:flex;flex-wrap:wrap;gap:16px 24px;align-items:end;margin:0 0 8px}
.outlines figure{margin:0;max-width:11rem;display:grid;justify-items:center;gap:4px}
.outlines svg{display:block;max-width:100%}
.outlines .body{fill:var(--surface);stroke:var(--quiet);stroke-width:1.5}
.outlines figcaption{font-size:.8125rem;line-height:1.3;text-align:center;min-height:2.6em}
.takes{display:grid;grid-template-columns:repeat(auto-fill,minmax(min(100%,18rem),1fr));gap:4px 24px;margin:0}
.takes dt{font-weight:600}
.takes dd{margin:0 0 8px;color:var(--quiet);font-size:.9375rem}
.with-drawing{display:grid;grid-template-columns:minmax(0,1fr);gap:16px}
@media (min-width:60rem){.with-drawing{grid-template-columns:minmax(0,1fr) 20rem}.two{display:grid;grid-template-columns:minmax(0,1fr) minmax(0,1fr);gap:24px;align-items:start}}
.notes{margin:0;padding-inline-start:1.2em;max-width:75ch}
footer{margin-top:40px;padding-top:12px;border-top:1px solid var(--line);color:var(--quiet);font-size:.875rem}
[hidden]{display:none!important}
@media (forced-colors:active){.sign,.kind{color:CanvasText!important}.drawing .tape{stroke:LinkText}.drawing .body,.outlines .body,.drawing .lead{stroke:CanvasText}.drawing text{fill:CanvasText}}
`;

const print = `
@media print{
:root{color-scheme:light;--ground:#fff;--surface:#fff;--band:#fff;--line:#b9b4a8;--text:#000;--quiet:#444;--chalk:#1f5fa8;--thread:#8f1d16;--brass:#6b4b00;--leaf:#1f5737}
html{font-size:10pt;line-height:1.35}
body{padding:0;max-width:none}
header{padding-top:0}
nav,.tools,.buyer,#buyer,.needs-script{display:none!important}
h2{margin:18pt 0 6pt;break-after:avoid}
.scroll{overflow:visible;border:0;border-radius:0}
thead{display:table-header-group}
tr,.patterns>article,.bodies li,.outlines figure{break-inside:avoid}
.chart th,.chart td{padding:2.5pt 4pt;white-space:normal;position:static!important;background:none!important;border-color:#b9b4a8}
.chart thead th{min-width:0;font-size:8.5pt}
.chart th:first-child{max-width:none;min-width:0}
.chart tr[hidden]{display:table-row!important}
.patterns{display:block;columns:2;column-gap:14pt}
.patterns>article{border:0;border-top:1px solid #b9b4a8;border-radius:0;padding:5pt 0;margin:0}
th button{display:contents}
th button,sup a{text-decoration:none}
th[aria-sort] button::after{content:none}
}
`;
