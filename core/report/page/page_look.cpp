#include "report/page/page_look.h"

namespace riserun::report {

const std::string_view kPageStyle = R"css(
:root{color-scheme:light dark;--ink:#16181c;--paper:#fbfaf7;--line:#c9c5bb;--soft:#5d5a52;--ready:#1d6b3a;--open:#8a5300;--no:#a3221b}
@media(prefers-color-scheme:dark){:root{--ink:#eceae4;--paper:#17191c;--line:#45484d;--soft:#a9a69d;--ready:#6fd093;--open:#f0b450;--no:#ff8a80}}
*{box-sizing:border-box}
body{margin:0;background:var(--paper);color:var(--ink);font:1.125rem/1.45 system-ui,sans-serif;overflow-wrap:anywhere}
main{max-width:62rem;margin:0 auto;padding:1rem}
h1{font-size:1.5rem;margin:0 0 .25rem;display:flex;flex-wrap:wrap;gap:.25rem 1rem;justify-content:space-between}
h2{font-size:1.15rem;margin:1.6rem 0 .4rem;border-bottom:2px solid var(--line)}
h3{font-size:1rem;margin:1rem 0 .2rem;color:var(--soft)}
.ready{color:var(--ready)}.not-yet{color:var(--open)}.refused{color:var(--no)}
.mend{font-weight:600}.whole{white-space:nowrap}.soft{color:var(--soft);font-size:.9em}
ul,ol{margin:.3rem 0;padding-left:1.4rem}
ul.ticks{list-style:none;padding:0}
ul.ticks li{border-bottom:1px solid var(--line)}
label{display:grid;grid-template-columns:1.8rem minmax(2rem,auto) 1fr auto;gap:.2rem .6rem;align-items:baseline;min-height:2.75rem;padding:.55rem 0}
label.step{grid-template-columns:1.8rem 1fr}
input[type=checkbox]{width:1.35rem;height:1.35rem;margin:0;align-self:start}
input:checked~*{opacity:.5;text-decoration:line-through}
dl{display:grid;grid-template-columns:minmax(5.5rem,auto) 1fr;gap:.25rem .8rem;margin:.3rem 0}
dt{color:var(--soft)}dd{margin:0}
.pair{display:grid;grid-template-columns:repeat(auto-fit,minmax(18rem,1fr));gap:0 2rem}
figure{margin:.6rem 0;overflow-x:auto}
figure svg{width:100%;min-width:34rem;height:auto;display:block}
@media print{
:root{--ink:#000;--paper:#fff;--line:#999;--soft:#333;--ready:#000;--open:#000;--no:#000}
@page{margin:12mm}
body{font-size:8pt;line-height:1.2}
main{max-width:none;padding:0}
section+section{break-before:page}
h1{font-size:13pt}h2{font-size:10pt;margin:.5rem 0 .15rem}h3{font-size:9pt;margin:.3rem 0 0}
label{min-height:0;padding:.08rem 0}
input[type=checkbox]{width:9pt;height:9pt}
.pair{grid-template-columns:1fr 1fr}
ul.ticks br{display:none}ul.ticks .soft{margin-left:.8em}
figure{break-inside:avoid}figure svg{min-width:0}
}
)css";

const std::string_view kPageScript = R"js(
(function(){
  var job='riserun '+document.body.dataset.job+' ';
  document.querySelectorAll('input[type=checkbox]').forEach(function(box){
    var key=job+box.dataset.key;
    try{box.checked=localStorage.getItem(key)==='1';}catch(e){}
    box.addEventListener('change',function(){
      try{if(box.checked)localStorage.setItem(key,'1');else localStorage.removeItem(key);}catch(e){}
    });
  });
})();
)js";

}  // namespace riserun::report
