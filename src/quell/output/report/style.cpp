#include "quell/output/report/style.h"

#include <fmt/format.h>

namespace quell::output {

namespace {

/// A CSS string inside <style>: everything that could end it, or the element, is written as a hex escape.
std::string css_string(std::string_view text) {
  std::string out = "\"";
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte < 0x20 || c == '"' || c == '\\' || c == '<' || c == '>' || c == '&')
      out += fmt::format("\\{:x} ", byte);
    else
      out += c;
  }
  return out + "\"";
}

constexpr std::string_view page_style = R"(
:root{--ink:#1c262b;--quiet:#59666c;--rule:#c9cfd2;--soft:#eef2f3;--accent:#0b4f6c;--bad:#9a2a0f;--warn:#7a5200;
--serif:"Source Serif 4","Source Serif Pro",Charter,"Bitstream Charter","Sitka Text",Cambria,"DejaVu Serif Condensed",
Georgia,serif;
--sans:"Source Sans 3","Source Sans Pro","Segoe UI","Helvetica Neue","DejaVu Sans Condensed",Arial,sans-serif}
*{box-sizing:border-box;print-color-adjust:exact;-webkit-print-color-adjust:exact}
html{background:#e9ecec}
body{margin:0 auto;max-width:210mm;padding:16mm 18mm 24mm;background:#fff;color:var(--ink);font:10.4pt/1.46 var(--serif);
font-variant-numeric:lining-nums tabular-nums;overflow-wrap:break-word}
p{margin:.45em 0 .7em;max-width:150mm}
a{color:var(--accent);text-decoration:none;border-bottom:.5px solid #a9bfca}
h1{font-weight:600;font-size:21pt;line-height:1.16;margin:.1em 0 .15em;letter-spacing:-.005em}
h2{font-weight:600;font-size:15pt;line-height:1.2;margin:2.2em 0 .7em;padding-top:.45em;border-top:1.6px solid var(--ink)}
h2 .chapter{display:inline-block;min-width:1.9em;color:var(--accent)}
.contents+h3{margin-top:1em}
h3{font:600 10.6pt/1.3 var(--sans);margin:1.6em 0 .4em}
h4{font:600 9.6pt/1.35 var(--sans);margin:0}
ul{margin:.3em 0 .8em;padding-left:1.2em;max-width:150mm}
li{margin:.15em 0}
code{font-family:"Source Code Pro",Consolas,"DejaVu Sans Mono",monospace;font-size:.86em}
math{font-family:"Latin Modern Math","STIX Two Math","Cambria Math","DejaVu Math TeX Gyre",math;font-size:1.04em}
.office{font:600 8.4pt/1.3 var(--sans);letter-spacing:.09em;text-transform:uppercase;color:var(--accent);margin:0}
.subtitle{font-size:12pt;color:var(--quiet);margin:0 0 1em}
table{border-collapse:collapse;width:100%;font:8.6pt/1.34 var(--sans);margin:.5em 0 1.2em;
font-variant-numeric:lining-nums tabular-nums}
caption{text-align:left;font:600 8.8pt/1.3 var(--sans);padding:0 0 .35em;caption-side:top}
th{font-weight:600;text-align:left;vertical-align:bottom;padding:.28em .7em .28em 0;border-bottom:1.1px solid var(--ink);
line-height:1.22}
td{vertical-align:top;padding:.26em .7em .26em 0;border-bottom:.5px solid var(--rule)}
th:last-child,td:last-child{padding-right:0}
.n{text-align:right}td.n{white-space:nowrap}.n+:not(.n){padding-left:.7em}.n+.unit{padding-left:0}
sub{font-size:.74em;line-height:0;vertical-align:-.25em}
.c{text-align:center}
.w{white-space:nowrap}
.q,.q td{color:var(--quiet)}
.unit{font-weight:400;color:var(--quiet)}
td .said{display:block;color:var(--ink)}
td .advice{display:block;margin-top:.15em}
td .advice b{font-weight:600}
tr.group td{font-weight:600;padding-top:.9em;border-bottom:1px solid var(--ink)}
tr.strong td{font-weight:600;background:var(--soft)}
tr.strong td:first-child{box-shadow:inset 2.4px 0 0 var(--accent);padding-left:.5em}
.dense{font-size:8pt}.dense th:nth-child(2){min-width:19mm}.cases th:first-child{min-width:26mm}.dense th,.dense td{padding-right:.5em}.dense td{padding-top:.12em;padding-bottom:.12em}
.findings{table-layout:fixed;font-size:8.2pt}.findings th:nth-child(1){width:18mm}.findings th:nth-child(3){width:21mm}
.findings th:nth-child(4){width:23mm}.findings th:nth-child(5){width:37mm}
.title-block{width:100%;margin:.3em 0 1.2em;border-top:1.6px solid var(--ink);border-bottom:1.6px solid var(--ink)}
.title-block td{padding:.24em .8em .24em 0}
.title-block td:nth-child(odd){color:var(--quiet);white-space:nowrap;width:1%}
.title-block code{word-break:break-all}
.verdict{display:flex;gap:1em;align-items:baseline;margin:.9em 0 1em;padding:.6em .9em;background:var(--soft);
border-left:4px solid var(--accent)}
.verdict.bad{border-left-color:var(--bad)}.verdict.warn{border-left-color:var(--warn)}
.verdict b{font:600 10.4pt/1.3 var(--sans);white-space:nowrap}
.verdict span{font:9pt/1.35 var(--sans)}
.lead{font-size:11.2pt;line-height:1.45;max-width:none}
.pair{display:grid;grid-template-columns:1fr 1fr;gap:0 8mm;align-items:start}
.pair table{margin-top:.1em}
.notice{border:1.2px solid var(--ink);padding:.6em 1em .4em;margin:1em 0;break-inside:avoid}
.notice h3{margin:.1em 0 .3em}
.notice p,.notice ul{max-width:none;font-size:8.9pt;line-height:1.34;margin:.25em 0 .4em}.notice li{margin:.08em 0}
.contents{columns:3;column-gap:8mm;break-inside:avoid;padding:0;list-style:none;font:9.4pt/1.6 var(--sans);max-width:none;
margin:.4em 0 1.4em}
.contents li{margin:0;display:flex;gap:.6em}.contents .chapter{min-width:1.4em;text-align:right;color:var(--quiet)}
figure{margin:1em 0 1.2em;break-inside:avoid}
figure svg{display:block;width:100%;height:auto}
figcaption{font:8.6pt/1.35 var(--sans);margin-top:.4em}
.remark-row td{padding-top:0;border-bottom:.5px solid var(--rule)}tr:has(+.remark-row) td{border-bottom:0}
figcaption b{font-weight:600}
.status{font-weight:600;white-space:nowrap}
.status.fails{color:var(--bad)}.status.caution{color:var(--warn)}.status.ok{color:var(--quiet);font-weight:400}
.status.fails span,.status.caution span{display:inline-block;min-width:1.2em}
.status.ok span{display:inline-block;min-width:1.2em}
.badge{display:inline-block;max-width:100%;font:600 7.2pt/1.2 var(--sans);letter-spacing:.02em;color:var(--quiet);
border:.6px solid var(--rule);border-radius:2px;padding:.05em .4em}
.step{display:grid;grid-template-columns:27mm 1fr 32mm;gap:0 4mm;padding:.5em 0 .45em;border-bottom:.5px solid var(--rule);
break-inside:avoid;font:8.8pt/1.38 var(--sans)}
.step .ref{color:var(--quiet);font-size:7.9pt}
.step .ref b{display:block;color:var(--ink);font-size:8.8pt}
.step .out{text-align:right;border-left:.5px solid var(--rule);padding-left:3mm;font-size:9.4pt}
.step .out b{font-weight:600;white-space:nowrap;display:block}
.step .out .range{display:block;font-size:7.9pt;color:var(--quiet);margin-top:.3em}
.step .out .range.outside{color:var(--bad);font-weight:600}
.step math{font-size:10pt}.step .ref{overflow-wrap:anywhere}
.step .equation,.card .equation{margin:.12em 0;overflow-x:auto;overflow-y:hidden}
.equation.long math{font-size:8.6pt}.equation.tiny math{font-size:6.6pt}
.equation math{display:inline-block;text-align:left;max-width:100%}
.step table{font-size:7.9pt;margin:.35em 0 0}.step table td,.step table th{padding-top:.1em;padding-bottom:.1em}
.step table{table-layout:fixed}.step table th:nth-child(1){width:10%}.step table th:nth-child(2){width:21%}
.step table th:nth-child(3){width:25%}.step span.from{color:var(--quiet)}.step table math{font-size:9pt}
.step table th{border-bottom-width:.5px;font-weight:400;color:var(--quiet)}
.step table td{border-bottom:0}
.working-head{break-inside:avoid;display:grid;grid-template-columns:27mm 1fr 32mm;gap:0 4mm;font:600 7.9pt/1.3 var(--sans);color:var(--quiet);
border-bottom:1.1px solid var(--ink);padding-bottom:.2em}
.working-head :last-child{text-align:right}
.remark{font:8.8pt/1.4 var(--sans);color:var(--quiet);margin:.2em 0 .6em}
.card{break-inside:avoid;border-top:.8px solid var(--ink);padding:.4em 0 0;margin:0 0 .8em;font:8.8pt/1.38 var(--sans)}
.card .head{display:flex;justify-content:space-between;gap:1em;align-items:baseline}
.card p{margin:.2em 0;max-width:none}
.card table{margin:.2em 0 .3em;font-size:8.1pt}.card td,.card th{padding-top:.1em;padding-bottom:.1em}
.card th{border-bottom-width:.5px;font-weight:400;color:var(--quiet)}.card td{border-bottom:0}
.card table{table-layout:fixed}.card th:nth-child(1){width:11%}.card th:nth-child(2){width:7%}
.card th:nth-child(4){width:12%}.card th:nth-child(5){width:24%}
.small{font-size:8.4pt}
.sources{list-style:none;padding:0;max-width:none;font-size:9.6pt}
.sources li{padding-left:1.6em;text-indent:-1.6em;margin:.35em 0;break-inside:avoid}
thead{display:table-header-group}
tr{break-inside:avoid}
h2,h3,h4,caption,.remark,.working-head{break-after:avoid}
@media screen{body{box-shadow:0 0 0 1px #d5dadb;margin-top:8mm;margin-bottom:8mm}}
@media screen and (max-width:760px){body{padding:6mm 5mm;margin:0}.pair,.step,.working-head{grid-template-columns:1fr}
.contents{columns:1}table{display:block;overflow-x:auto}}
@media print{html{background:none}body{max-width:none;padding:0;margin:0;font-size:9.4pt}a{border-bottom:0}
h2{margin-top:1.8em}h2.new-page{break-before:page;margin-top:0}p{orphans:3;widows:3}.equation{overflow:visible!important}}
)";

}  // namespace

std::string report_style(std::string_view header) {
  constexpr std::string_view margin_font =
      "font:7.6pt \"Source Sans 3\",\"Segoe UI\",\"DejaVu Sans Condensed\",sans-serif;color:#59666c;";
  return fmt::format(
             "@page{{size:A4;margin:20mm 18mm 18mm;"
             "@top-left{{content:{};{}}}"
             "@top-right{{content:\"Supports and does not replace engineering judgement\";{}}}"
             "@bottom-right{{content:\"Page \" counter(page) \" of \" counter(pages);{}}}}}\n",
             css_string(header), margin_font, margin_font, margin_font) +
         std::string(page_style);
}

}  // namespace quell::output
