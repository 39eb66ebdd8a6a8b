"use strict";
(() => {
  const data = JSON.parse(document.getElementById("chart-data").textContent);
  const holder = document.getElementById("charts");
  const dark = matchMedia("(prefers-color-scheme: dark)");
  const charts = [];
  const days = ["Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"];
  const months = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

  const offsetAt = s => {
    let offset = data.offsets[0][1];
    for (const [from, value] of data.offsets) if (s >= from) offset = value;
    return offset;
  };
  const two = n => String(n).padStart(2, "0");
  const localDate = s => new Date((data.startEpochS + s + offsetAt(s)) * 1000);
  const localText = s => {
    const d = localDate(s);
    return `${days[d.getUTCDay()]} ${d.getUTCDate()} ${months[d.getUTCMonth()]} ${two(d.getUTCHours())}:${two(d.getUTCMinutes())}:${two(d.getUTCSeconds())}`;
  };

  // Ticks on round local times: fewer on a phone, finer as one looks closer.
  const steps = [60, 300, 900, 1800, 3600, 10800, 21600, 43200, 86400, 172800, 604800];
  function ticks([from, to], width) {
    const room = Math.max(3, Math.floor(width / 90));
    const step = steps.find(one => (to - from) / one <= room) ?? steps[steps.length - 1];
    const values = [];
    const texts = [];
    const fine = Math.min(step, 900);
    for (let s = Math.ceil((from + data.startEpochS) / fine) * fine - data.startEpochS; s <= to; s += fine) {
      const seconds = data.startEpochS + s + offsetAt(s);
      if (seconds % step !== 0) continue;
      const d = localDate(s);
      const isMidnight = d.getUTCHours() === 0 && d.getUTCMinutes() === 0;
      values.push(s);
      texts.push(isMidnight || values.length === 1
        ? `${isMidnight ? "" : `${two(d.getUTCHours())}:${two(d.getUTCMinutes())}<br>`}${days[d.getUTCDay()]} ${d.getUTCDate()} ${months[d.getUTCMonth()]}`
        : `${two(d.getUTCHours())}:${two(d.getUTCMinutes())}`);
    }
    return { tickmode: "array", tickvals: values, ticktext: texts };
  }

  function palette() {
    const style = getComputedStyle(document.documentElement);
    const get = name => style.getPropertyValue(name).trim();
    return {
      ink: get("--ink"), soft: get("--soft"), line: get("--line"), abnormal: get("--abnormal"),
      fill: dark.matches ? "#4a5056" : "#c9ced3", stroke: dark.matches ? "#a9b0b7" : "#5b636b",
      veil: dark.matches ? "rgba(31,33,35,.75)" : "rgba(255,255,255,.75)",
      light: dark.matches ? "#8b8672" : "#cfc9b0",
    };
  }

  const curve = (c, more) => ({
    x: c.s, y: c.v, customdata: c.s.map(localText), mode: "lines", type: "scatter", showlegend: false, ...more,
  });
  const level = (value, text, axis, color, dash) => ({
    shape: { type: "line", xref: "paper", x0: 0, x1: 1, yref: axis, y0: value, y1: value, line: { color, width: 1, dash } },
    note: { xref: "paper", x: 1, xanchor: "right", yref: axis, y: value, yanchor: "bottom", text, showarrow: false, font: { size: 10, color }, bgcolor: palette().veil, borderpad: 1 },
  });
  const baseAxis = p => ({ gridcolor: p.line, zerolinecolor: p.line, linecolor: p.line, fixedrange: true, tickfont: { size: 11 }, title: { font: { size: 11 } } });

  function marks(p) {
    return data.marks.map(m => ({
      type: "line", x0: m.atS, x1: m.atS, yref: "paper", y0: 0, y1: 1,
      line: { color: m.isAbnormal ? p.abnormal : p.soft, width: m.isAbnormal ? 1.5 : 1, dash: m.isAbnormal ? "solid" : "dot" },
    }));
  }

  function trays(rack) {
    const count = rack.trays.length;
    return p => {
      const layout = { shapes: marks(p), annotations: [] };
      const traces = [];
      rack.trays.forEach((tray, i) => {
        const axis = i === 0 ? "y" : `y${i + 1}`;
        const gap = 0.04;
        const size = (1 - gap * (count - 1)) / count;
        const from = i * (size + gap);
        const top = Math.max(tray.rimMm, ...tray.depth.v) * 1.05;
        layout[`yaxis${i === 0 ? "" : i + 1}`] = {
          ...baseAxis(p), domain: [from, from + size], range: [0, top], nticks: 3,
          title: { text: `tier ${tray.tier}, mm`, font: { size: 11 } },
        };
        traces.push(curve(tray.depth, {
          yaxis: axis, fill: "tozeroy", fillcolor: p.fill, line: { color: p.stroke, width: 1 },
          hovertemplate: `tier ${tray.tier}: %{y:.0f} mm<br>%{customdata}<extra></extra>`,
        }));
        const pipe = level(tray.standpipeMm, "standpipe", axis, p.soft, "dash");
        const rim = level(tray.rimMm, "rim", axis, p.soft, "dot");
        layout.shapes.push(pipe.shape, rim.shape);
        if (i === count - 1) layout.annotations.push(pipe.note, rim.note);
      });
      return { traces, layout };
    };
  }

  function reservoir(rack) {
    return p => {
      const layout = { shapes: marks(p), annotations: [], yaxis: { ...baseAxis(p), range: [0, rack.capacityL * 1.05], title: { text: "L", font: { size: 11 } } } };
      if (rack.lowFloatL !== null) {
        const low = level(rack.lowFloatL, "low float", "y", p.soft, "dash");
        layout.shapes.push(low.shape);
        layout.annotations.push(low.note);
      }
      return {
        layout,
        traces: [curve(rack.reservoir, {
          fill: "tozeroy", fillcolor: p.fill, line: { color: p.stroke, width: 1 }, hovertemplate: "%{y:.0f} L<br>%{customdata}<extra></extra>",
        })],
      };
    };
  }

  // Curves over one another, the first at the bottom, each on a scale that fits it.
  function stacked(parts) {
    return p => {
      const layout = { shapes: marks(p), annotations: [] };
      const traces = [];
      parts.forEach((part, i) => {
        const axis = i === 0 ? "y" : `y${i + 1}`;
        const gap = 0.06;
        const size = (1 - gap * (parts.length - 1)) / parts.length;
        const from = i * (size + gap);
        const low = Math.min(...part.curve.v);
        const high = Math.max(...part.curve.v);
        const room = Math.max(high - low, part.least) * 0.1;
        layout[`yaxis${i === 0 ? "" : i + 1}`] = {
          ...baseAxis(p), domain: [from, from + size], range: [low - room, Math.max(high, low + part.least) + room], nticks: 3,
          title: { text: part.unit, font: { size: 11 } },
        };
        traces.push(curve(part.curve, {
          yaxis: axis, line: { color: p.stroke, width: 1.2 }, hovertemplate: `${part.name}: %{y:.2f} ${part.unit}<br>%{customdata}<extra></extra>`,
        }));
      });
      return { traces, layout };
    };
  }

  const reservoirLife = rack => stacked([
    { name: "conductivity", unit: "mS/cm", least: 0.05, curve: rack.conductivityMsPerCm },
    { name: "oxygen", unit: "mg/L", least: 1, curve: rack.oxygenMgPerL },
    { name: "water", unit: "°C", least: 1, curve: rack.waterC },
  ]);

  const dryness = rack => stacked(rack.vapourDeficitKPa.map((deficit, i) => (
    { name: `tier ${rack.trays[i].tier}`, unit: "kPa", least: 0.2, curve: deficit })));

  function current(circuit) {
    return p => {
      const over = circuit.current.v.map(a => a > circuit.limitA ? a : null);
      const top = Math.max(circuit.breakerA, ...circuit.current.v) * 1.08;
      const limit = level(circuit.limitA, "continuous limit", "y", p.soft, "dash");
      const breaker = level(circuit.breakerA, "breaker", "y", p.soft, "dot");
      return {
        traces: [
          curve(circuit.current, {
            line: { color: p.stroke, width: 1.2, shape: "hv" }, fill: "tozeroy", fillcolor: p.fill,
            hovertemplate: "%{y:.2f} A<br>%{customdata}<extra></extra>",
          }),
          curve({ s: circuit.current.s, v: over }, {
            mode: "lines+markers", marker: { symbol: "x", size: 5, color: p.abnormal }, line: { color: p.abnormal, width: 2, shape: "hv" },
            hovertemplate: "above the limit: %{y:.2f} A<br>%{customdata}<extra></extra>",
          }),
        ],
        layout: {
          shapes: [...marks(p), limit.shape, breaker.shape], annotations: [limit.note, breaker.note],
          yaxis: { ...baseAxis(p), range: [0, top], title: { text: "A", font: { size: 11 } } },
        },
      };
    };
  }

  // One rack needs no name before every load.
  const several = data.racks.length > 1;
  const label = load => several ? load.name : load.name.slice(load.name.indexOf("/") + 1);

  function bands(loads) {
    return p => ({
      traces: [...loads].reverse().map(load => ({
        type: "bar", orientation: "h", base: load.fromS, x: load.forS, y: load.fromS.map(() => label(load)), showlegend: false, width: 0.62,
        marker: { color: load.kind === "light" ? p.light : p.stroke, line: { width: 0 } },
        customdata: load.fromS.map((from, i) => `${localText(from)} to ${localText(from + load.forS[i])}`),
        hovertemplate: `${load.name} on<br>%{customdata}<extra></extra>`,
      })),
      layout: {
        shapes: marks(p), barmode: "overlay", bargap: 0.3,
        yaxis: { ...baseAxis(p), type: "category", categoryorder: "array", categoryarray: [...loads].reverse().map(label) },
      },
    });
  }

  function add(title, height, build) {
    const heading = document.createElement("h3");
    heading.textContent = title;
    const div = document.createElement("div");
    div.className = "chart";
    holder.append(heading, div);
    charts.push({ div, height, build });
  }

  let range = [0, data.lengthS];
  let busy = false;
  function draw(chart) {
    const p = palette();
    const { traces, layout } = chart.build(p);
    const wide = chart.div.clientWidth > 560;
    return Plotly.react(chart.div, traces, {
      ...layout, height: chart.height, margin: { l: wide ? 104 : 86, r: 10, t: 8, b: 36 }, paper_bgcolor: "rgba(0,0,0,0)", plot_bgcolor: "rgba(0,0,0,0)",
      font: { family: "system-ui, sans-serif", color: p.ink, size: 12 }, hovermode: "closest", dragmode: "zoom",
      hoverlabel: { bgcolor: p.line, bordercolor: p.line, font: { color: p.ink } },
      xaxis: { ...baseAxis(p), fixedrange: false, range: [...range], anchor: "y", ...ticks(range, chart.div.clientWidth) },
    }, { displaylogo: false, responsive: false, displayModeBar: false });
  }

  async function drawAll() {
    busy = true;
    for (const chart of charts) await draw(chart);
    busy = false;
  }

  function follow(change) {
    if (busy) return;
    if (change["xaxis.autorange"]) range = [0, data.lengthS];
    else if (change["xaxis.range[0]"] !== undefined) range = [change["xaxis.range[0]"], change["xaxis.range[1]"]];
    else return;
    drawAll();
  }

  for (const rack of data.racks) {
    add(`Water in the trays${several ? ` of ${rack.name}` : ""}, top tier on top`, 80 + 90 * rack.trays.length, trays(rack));
    add(`Reservoir${several ? ` of ${rack.name}` : ""}`, 180, reservoir(rack));
    add(`Its water${several ? `, ${rack.name}` : ""}: temperature, oxygen, conductivity`, 300, reservoirLife(rack));
    add(`Vapour pressure deficit of the air${several ? ` of ${rack.name}` : ""}, top tier on top`, 60 + 70 * rack.trays.length, dryness(rack));
  }
  for (const circuit of data.circuits) add(`Current of ${circuit.name}`, 220, current(circuit));
  const lights = data.loads.filter(load => load.kind === "light");
  const others = data.loads.filter(load => load.kind !== "light");
  if (lights.length) add("Light", 60 + 26 * lights.length, bands(lights));
  if (others.length) add("Pump, valves, air", 60 + 26 * others.length, bands(others));
  drawAll().then(() => charts.forEach(chart => chart.div.on("plotly_relayout", follow)));
  dark.addEventListener("change", drawAll);
  let resizing = 0;
  addEventListener("resize", () => { clearTimeout(resizing); resizing = setTimeout(drawAll, 150); });

  const filter = document.getElementById("log-filter");
  const rows = [...document.querySelectorAll(".log tbody tr")];
  filter.addEventListener("input", () => {
    const wanted = filter.value.toLowerCase();
    let shown = 0;
    for (const row of rows) {
      row.hidden = !row.textContent.toLowerCase().includes(wanted);
      shown += row.hidden ? 0 : 1;
    }
    document.getElementById("log-count").textContent = wanted ? `${shown} of ${rows.length}` : "";
  });
})();
