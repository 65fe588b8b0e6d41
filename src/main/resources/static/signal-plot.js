// Read-out and zoom for a plot of signals. Without this script the links beside the plot zoom, and the plot says all it has to say.
"use strict";
for (const box of document.querySelectorAll("[data-plot]")) {
  const svg = box.querySelector("svg.plot"), out = box.querySelector("[data-readout]"), d = svg.dataset;
  const left = +d.left, columns = +d.columns, from = +d.from, to = +d.to, height = svg.viewBox.baseVal.height;
  const lines = [...svg.querySelectorAll("[data-values]")].map(l => ({ ...l.dataset, all: l.dataset.values.split(",") }));
  const add = (name, style) => { const e = svg.appendChild(document.createElementNS(svg.namespaceURI, name)); e.classList.add(style); return e; };
  const cursor = add("path", "plot-cursor"), range = add("rect", "plot-range");
  let column = 0, pressed = -1;
  const time = c => from + c / columns * (to - from);
  const words = s => Math.floor(s / 60) + ":" + String(Math.floor(s % 60)).padStart(2, "0");
  const columnOf = e => {
    const r = svg.getBoundingClientRect();
    return Math.max(0, Math.min(columns - 1, Math.round((e.clientX - r.left) / r.width * svg.viewBox.baseVal.width - left)));
  };
  const show = c => {
    column = c;
    cursor.setAttribute("d", `M${left + c} 20V${height - 40}`);
    out.textContent = words(time(c)) + ": " + lines.map(l => `${l.name} ${l.all[c] === "" ? "no reading" : l.all[c] + " " + l.unit}`).join(", ");
  };
  const zoom = (a, b) => { const u = new URL(location); u.searchParams.set("from", a.toFixed(1)); u.searchParams.set("to", b.toFixed(1)); location.assign(u); };
  svg.addEventListener("pointermove", e => {
    show(columnOf(e));
    if (pressed >= 0) {
      range.setAttribute("x", left + Math.min(pressed, column)); range.setAttribute("width", Math.abs(column - pressed));
      range.setAttribute("y", 20); range.setAttribute("height", height - 60);
    }
  });
  svg.addEventListener("pointerdown", e => { pressed = columnOf(e); });
  svg.addEventListener("pointerup", e => {
    const c = columnOf(e), a = Math.min(pressed, c), b = Math.max(pressed, c);
    if (pressed >= 0 && b - a > 4) zoom(time(a), time(b));
    pressed = -1; range.setAttribute("width", 0);
  });
  box.addEventListener("keydown", e => {
    const by = { ArrowLeft: -1, ArrowRight: 1, PageUp: -50, PageDown: 50 }[e.key];
    if (by) { e.preventDefault(); show(Math.max(0, Math.min(columns - 1, column + by))); }
  });
}
