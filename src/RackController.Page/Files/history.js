// Draws the past of a rack from its numbers. Without it the page shows them as tables.
"use strict";

const zoom = document.getElementById("zoom");
const note = document.getElementById("chart-note");
const dark = matchMedia("(prefers-color-scheme: dark)");
const dashes = ["solid", "dash", "dot", "dashdot", "longdash"];
const hasMouse = matchMedia("(pointer: fine)").matches;
let data;
let range;

// The axis has no zones: it is told local time as if it were UTC.
const local = (s) => (s + data.offsetS) * 1000;
const colour = (name) => getComputedStyle(document.documentElement).getPropertyValue(`--${name}`).trim();
const short = (name) => name.slice(name.indexOf("/") + 1);

const tickFormats = [
  { dtickrange: [null, 1000 * 60 * 60 * 23], value: "%H:%M\n%a %e %b" },
  { dtickrange: [1000 * 60 * 60 * 23, null], value: "%e %b\n%Y" },
];

function layoutOf(place, height, yAxis, more) {
  const quiet = { gridcolor: colour("edge"), zerolinecolor: colour("edge"), linecolor: colour("edge") };
  return {
    height, margin: { l: 60, r: 12, t: 8, b: data.axisNote ? 64 : 44 }, dragmode: hasMouse ? "zoom" : false, hovermode: "closest",
    paper_bgcolor: "rgba(0,0,0,0)", plot_bgcolor: "rgba(0,0,0,0)", font: { color: colour("ink"), family: "system-ui, sans-serif", size: 13 },
    hoverlabel: { bgcolor: colour("card"), font: { color: colour("ink") } },
    showlegend: false, legend: { orientation: "h", y: 1, yanchor: "bottom", x: 0 },
    xaxis: {
      ...quiet, type: "date", range, tickangle: 0, nticks: Math.max(3, Math.floor(place.clientWidth / 90)), tickformatstops: tickFormats,
      title: { text: data.axisNote, font: { size: 12 } },
    },
    yaxis: { ...quiet, fixedrange: true, ...yAxis }, ...more,
  };
}

// The mean as a line, and behind it from the least to the greatest, so that no peak is lost.
function tracesOf(series, at, unit) {
  const x = series.atS.map(local);
  const ink = at % 2 === 0 ? colour("accent") : colour("ink");
  const edge = { x, mode: "lines", line: { width: 0 }, hoverinfo: "skip", showlegend: false, connectgaps: false, legendgroup: series.name };
  const parts = [];
  const begin = (from) => series.mean.indexOf(null, from);
  // A filled band may not cross a gap, so each part has its own.
  for (let from = 0; from < x.length;) {
    const end = begin(from) < 0 ? x.length : begin(from);
    if (end > from + 1) {
      parts.push(
        { ...edge, x: x.slice(from, end), y: series.least.slice(from, end) },
        { ...edge, x: x.slice(from, end), y: series.most.slice(from, end), fill: "tonexty", fillcolor: `${ink}33` });
    }
    from = end + 1;
  }
  return [...parts, {
    x, y: series.mean, name: short(series.name), mode: series.mean.length < 3 ? "lines+markers" : "lines", connectgaps: false,
    legendgroup: series.name, line: { width: 2, color: ink, dash: dashes[Math.floor(at / 2) % dashes.length] },
    customdata: series.least.map((least, i) => [least, series.most[i]]),
    hovertemplate: `${short(series.name)} %{y:.4~g} ${unit} (%{customdata[0]:.4~g} to %{customdata[1]:.4~g})<br>%{x|%a %e %b %H:%M}<extra></extra>`,
  }];
}

function lines() {
  return data.marks.map((mark) => ({
    type: "line", yref: "paper", y0: 0, y1: 1, x0: local(mark.atS), x1: local(mark.atS),
    line: mark.isAlarm ? { color: colour("odd"), width: 1.5 } : { color: colour("metal"), width: 1, dash: "dot" },
  }));
}

function chartOf(place, unit) {
  const traces = unit.series.flatMap((series, at) => tracesOf(series, at, unit.unit));
  const hasSeveral = unit.series.length > 1;
  const layout = layoutOf(place, 300, { title: { text: unit.unit, font: { size: 12 } } }, { showlegend: hasSeveral, shapes: lines() });
  layout.margin.t = hasSeveral ? 56 : 8;
  return [traces, layout];
}

function bars(place) {
  const rows = [...data.loads].reverse();
  const traces = rows.map((load) => ({
    x: load.onS.flatMap(([from, until]) => [local(from), local(until), null]),
    y: load.onS.flatMap(() => [short(load.name), short(load.name), null]),
    mode: "lines", line: { width: 12, color: colour("metal") }, connectgaps: false,
    hovertemplate: `${short(load.name)}<br>%{x|%a %e %b %H:%M:%S}<extra></extra>`,
  }));
  for (const isAlarm of [false, true]) {
    const its = data.marks.filter((mark) => mark.isAlarm === isAlarm);
    traces.push({
      x: its.map((mark) => local(mark.atS)), y: its.map(() => (isAlarm ? "alarms" : "floods")), text: its.map((mark) => mark.words),
      mode: "markers", hovertemplate: "%{text}<br>%{x|%a %e %b %H:%M:%S}<extra></extra>",
      marker: { size: 11, symbol: isAlarm ? "triangle-up" : "circle", color: isAlarm ? colour("odd") : colour("accent") },
    });
  }
  const names = [...rows.map((load) => short(load.name)), "floods", "alarms"];
  const yAxis = {
    type: "category", categoryorder: "array", categoryarray: names, range: [-0.7, names.length - 0.3], automargin: true, showgrid: false,
  };
  return [traces, layoutOf(place, 70 + 28 * names.length, yAxis, {})];
}

function show(key, chart) {
  const place = document.getElementById(`chart-${key}`);
  if (!place) {
    return;
  }
  const [traces, layout] = chart(place);
  const isNew = !place.classList.contains("js-plotly-plot");
  Plotly.react(place, traces, layout, { displayModeBar: false, responsive: true, doubleClick: false });
  if (isNew) {
    place.on("plotly_relayout", (change) => {
      if (change["xaxis.range[0]"] !== undefined) {
        look([change["xaxis.range[0]"], change["xaxis.range[1]"]].map(timeOf));
      }
    });
    place.on("plotly_doubleclick", () => look(moves.all()));
  }
}

const timeOf = (at) => (typeof at === "number" ? at : Date.parse(`${at.replace(" ", "T")}Z`));

function draw() {
  show("loads", bars);
  data.charts.forEach((unit) => show(unit.key, (place) => chartOf(place, unit)));
}

// All charts show the same time.
function look(next) {
  const whole = [local(data.fromS), local(data.untilS)];
  const least = 5 * 60 * 1000;
  const width = Math.min(Math.max(next[1] - next[0], least), whole[1] - whole[0]);
  const from = Math.min(Math.max((next[0] + next[1] - width) / 2, whole[0]), whole[1] - width);
  if (range[0] !== from || range[1] !== from + width) {
    range = [from, from + width];
    draw();
  }
}

const moves = {
  in: ([from, until]) => [from + (until - from) / 4, until - (until - from) / 4],
  out: ([from, until]) => [from - (until - from) / 2, until + (until - from) / 2],
  earlier: ([from, until]) => [from - (until - from) / 2, until - (until - from) / 2],
  later: ([from, until]) => [from + (until - from) / 2, until + (until - from) / 2],
  all: () => [local(data.fromS), local(data.untilS)],
};

async function begin() {
  try {
    const answer = await fetch(zoom.dataset.source);
    if (!answer.ok) {
      throw new Error(await answer.text());
    }
    data = await answer.json();
  } catch (reason) {
    note.textContent = `▲ No charts: ${reason.message}`;
    zoom.hidden = false;
    return;
  }
  range = moves.all();
  zoom.hidden = false;
  draw();
  zoom.addEventListener("click", (event) => {
    const move = moves[event.target.dataset.zoom];
    if (move) {
      look(move(range));
    }
  });
  dark.addEventListener("change", draw);
}

if (zoom) {
  begin();
}
