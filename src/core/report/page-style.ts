/** The page's own style: bright paper, ink text, one accent; prints on letter and A4. */
export const PAGE_STYLE = `
:root{--paper:#faf8f3;--sheet:#fffdf9;--ink:#1d2126;--soft:#565f6a;--rule:#ddd6c8;--accent:#0b5f6b;--accent-soft:#e3efef;
--driveshaft:#b84700;--tire:#0067a3;--engine:#00795a;--half-shaft:#7a4d9f;--accessory:#6b6f76;--fixed:#6b6f76;--unknown:#6b6f76;--warn:#7a5000;
font:15px/1.45 system-ui,-apple-system,"Segoe UI",sans-serif;color:var(--ink);background:var(--paper)}
*{box-sizing:border-box}body{margin:0 auto;max-width:900px;padding:24px}
h1{font:400 30px/1.22 Georgia,"Times New Roman",serif;margin:0 0 6px;text-wrap:balance}
h2{font-size:18px;margin:28px 0 8px}h3{font-size:15px;margin:16px 0 4px}
.why,.soft{color:var(--soft)}p{margin:0 0 8px;max-width:72ch}
header p.brand{font-weight:700;letter-spacing:.02em;margin:0 0 14px}
dl{display:flex;flex-wrap:wrap;gap:2px 28px;margin:12px 0 16px}dl div{display:flex;gap:10px}dt{color:var(--soft)}dd{margin:0}
figure{overflow-x:auto;margin:0 0 18px;background:var(--sheet);border:1px solid var(--rule);border-radius:8px;padding:12px 14px 6px;break-inside:avoid}
figcaption{font-weight:600;margin-bottom:4px}svg{display:block;width:100%;height:auto}
svg text{font-size:12px;fill:var(--soft)}svg text.strong{fill:var(--ink);font-weight:600}
svg.phone{display:none}
/* A phone shows the whole picture, drawn narrow with letters that can be read. */
@media screen and (max-width:640px){body{padding:16px}h1{font-size:24px}figure{padding:10px 8px 6px}svg.wide{display:none}svg.phone{display:block}}
.grid{stroke:var(--rule)}.trace{fill:none;stroke:var(--ink);stroke-width:1.1}.felt{fill:none;stroke:var(--accent);stroke-dasharray:2 4}
.band{opacity:.28}.mark{stroke-width:2}.drop{fill:none;stroke-width:1.5;stroke-dasharray:5 3}.track{fill:none;stroke-width:1.4}
rect.tire,circle.tire{fill:var(--tire)}line.tire,path.tire{stroke:var(--tire)}path.track.tire{stroke-dasharray:1 4}
rect.driveshaft,circle.driveshaft{fill:var(--driveshaft)}line.driveshaft,path.driveshaft{stroke:var(--driveshaft)}
rect.engine,circle.engine{fill:var(--engine)}line.engine,path.engine{stroke:var(--engine)}path.track.engine{stroke-dasharray:8 4}
rect.half-shaft,circle.half-shaft{fill:var(--half-shaft)}line.half-shaft,path.half-shaft{stroke:var(--half-shaft)}path.track.half-shaft{stroke-dasharray:8 3 1 3}
rect.accessory,circle.accessory,circle.fixed,circle.unknown{fill:var(--accessory)}line.accessory,path.accessory,path.fixed,path.unknown{stroke:var(--accessory)}
.shade{fill:var(--ink)}.shade-1{opacity:.07}.shade-2{opacity:.16}.shade-3{opacity:.3}.shade-4{opacity:.52}.shade-5{opacity:.85}
.wide{overflow-x:auto;margin-bottom:14px}table{border-collapse:collapse;width:100%;font-variant-numeric:tabular-nums}caption{text-align:left;font-weight:600;padding-bottom:4px}
th{text-align:left;font-weight:600;color:var(--soft)}th,td{padding:3px 10px 3px 0;border-bottom:1px solid var(--rule);vertical-align:top}
td.number,th.number{text-align:right;white-space:nowrap}
ul,ol{margin:0 0 8px;padding-left:22px}.next{background:var(--accent-soft);border-radius:8px;padding:14px 16px;break-inside:avoid}
.next h2{margin-top:0}.caution{border-left:3px solid var(--warn);padding:2px 0 2px 10px;color:var(--warn);margin:6px 0}
.cause{border-top:1px solid var(--rule);padding:8px 0;break-inside:avoid}.cause .row{display:flex;justify-content:space-between;gap:12px;font-weight:600}.row span+span{flex:none}.row .soft{font-weight:400}
footer{margin-top:28px;color:var(--soft);font-size:13px}
@media print{:root{background:#fff;font-size:12px}body{padding:0}figure,.next{background:none;border:1px solid #999}h1{font-size:22px}h2,h3,caption,thead{break-after:avoid}tr,li,.caution{break-inside:avoid}
.wide,figure{overflow:visible}.band,rect,.next{print-color-adjust:exact;-webkit-print-color-adjust:exact}}
@page{margin:16mm;@bottom-right{content:counter(page) " of " counter(pages);font:11px system-ui,sans-serif}}
`;
