// Zoom in place, swipe and read-out for the picture of a drive. While a finger moves, what is drawn is stretched; then the server draws
// the new stretch, thinned out to its columns. Without this script the links of the picture zoom, and it says all it has to say.
"use strict";
for (const box of document.querySelectorAll("[data-plot]")) {
  const stage = box.querySelector("[data-stage]"), out = box.querySelector("[data-readout]"), { path, none, failed } = box.dataset;
  const columns = +stage.dataset.columns, end = +stage.dataset.end, LEAST = 5, STILL = 6;
  const all = name => [...stage.querySelectorAll(name)];
  let drawn, view, lines, cursor = null, asked = null, timer;

  const limit = (v, low, high) => Math.max(low, Math.min(high, v));
  const clock = s => {
    const t = Math.round(s), two = n => String(n).padStart(2, "0");
    return t >= 3600 ? `${Math.floor(t / 3600)}:${two(Math.floor(t / 60) % 60)}:${two(t % 60)}` : `${Math.floor(t / 60)}:${two(t % 60)}`;
  };
  const svg = (place, name, style) => {
    const e = place.appendChild(document.createElementNS("http://www.w3.org/2000/svg", name));
    e.classList.add(style);
    return e;
  };
  const columnOf = time => (time - drawn.from) / (drawn.to - drawn.from) * columns;

  /** Takes in what the server has drawn. */
  const take = () => {
    drawn = { from: +stage.dataset.from, to: +stage.dataset.to };
    view = { ...drawn };
    lines = all(".plot-line").map(line => {
      let value = "-";
      return { ...line.dataset, panel: line.closest(".plot-panel"), all: line.dataset.values.split(",").map(v => value = v || value) };
    });
    stage.classList.remove("is-moving");
  };

  const point = time => {
    cursor = time === null ? null : limit(time, 0, end);
    all(".plot-cursor, .plot-at, .plot-when").forEach(e => e.remove());
    if (cursor === null || cursor < view.from || cursor > view.to) return;
    const column = columnOf(cursor), share = (cursor - view.from) / (view.to - view.from) * 100, isLate = share > 65;
    for (const place of all(".plot-time")) svg(place, "path", "plot-cursor").setAttribute("d", `M${column.toFixed(2)} 0V${place.viewBox.baseVal.height}`);
    const said = [];
    for (const line of lines) {
      const value = line.all[limit(Math.floor(column), 0, columns - 1)];
      said.push(`${line.name} ${value === "-" ? none : `${value} ${line.unit}`}`);
      const text = svg(line.panel, "text", "plot-at");
      text.setAttribute("x", share.toFixed(2) + "%"); text.setAttribute("dx", isLate ? -6 : 6); text.setAttribute("y", 13);
      text.setAttribute("text-anchor", isLate ? "end" : "start");
      text.textContent = value === "-" ? none : `${value} ${line.unit}`;
    }
    out.textContent = `${clock(cursor)}: ${said.join(", ")}`;
  };

  /** Shows another stretch: at once what there is, drawn wider or moved, and soon what the server draws of it. */
  const show = (from, to, wait = 150) => {
    const span = limit(to - from, Math.min(LEAST, end), end), first = limit(from, 0, end - span);
    view = { from: first, to: first + span };
    stage.classList.add("is-moving");
    const x = columnOf(view.from), width = columnOf(view.to) - x;
    for (const e of all(".plot-time")) e.setAttribute("viewBox", `${x} 0 ${width} ${e.viewBox.baseVal.height}`);
    point(cursor);
    clearTimeout(timer);
    timer = setTimeout(fetchIt, wait);
  };
  const fetchIt = async () => {
    if (asked) asked.abort();
    asked = new AbortController();
    const signal = asked.signal, query = `?from=${view.from.toFixed(1)}&to=${view.to.toFixed(1)}`;
    try {
      const answer = await fetch(`${path}/plot${query}`, { signal });
      if (!answer.ok) throw new Error(answer.status);
      const page = new DOMParser().parseFromString(await answer.text(), "text/html"), fresh = page.querySelector("[data-stage]");
      if (signal.aborted || fingers.size > 0) return;
      stage.replaceChildren(...fresh.childNodes);
      Object.assign(stage.dataset, fresh.dataset);
      for (const link of page.querySelectorAll("[data-zoom]")) {
        const old = box.querySelector(`[data-zoom=${link.dataset.zoom}]`);
        if (link.hidden && document.activeElement === old) stage.focus();
        old.hidden = link.hidden; old.href = link.getAttribute("href");
      }
      history.replaceState(null, "", view.to - view.from < end ? query : location.pathname);
      take();
      point(cursor);
    } catch (e) {
      if (signal.aborted) return;
      view = { ...drawn };
      for (const place of all(".plot-time")) place.setAttribute("viewBox", `0 0 ${columns} ${place.viewBox.baseVal.height}`);
      stage.classList.remove("is-moving");
      point(cursor);
      out.textContent = failed;
    }
  };
  const isPart = () => view.to - view.from < end - 0.05;
  /** By so much of what is shown, about a moment that stays where it is. */
  const zoom = (by, about) => {
    const at = about ?? (cursor !== null && cursor >= view.from && cursor <= view.to ? cursor : (view.from + view.to) / 2);
    show(at - (at - view.from) * by, at + (view.to - at) * by);
  };
  const move = seconds => show(view.from + seconds, view.to + seconds);
  const acts = {
    in: () => zoom(0.5), out: () => zoom(2), whole: () => show(0, end),
    earlier: () => move((view.from - view.to) / 2), later: () => move((view.to - view.from) / 2)
  };
  for (const link of box.querySelectorAll("[data-zoom]")) {
    link.addEventListener("click", e => {
      if (e.ctrlKey || e.metaKey || e.shiftKey) return;
      e.preventDefault();
      acts[link.dataset.zoom]();
    });
  }

  /** The cursor goes on by a hundredth of what is shown, and takes the picture along at its edge. */
  const step = by => {
    const span = view.to - view.from;
    point((cursor ?? (view.from + view.to) / 2) + by * span / 100);
    if (cursor < view.from) show(cursor - span / 4, cursor + span * 3 / 4);
    if (cursor > view.to) show(cursor - span * 3 / 4, cursor + span / 4);
  };
  stage.addEventListener("keydown", e => {
    if (e.ctrlKey || e.metaKey || e.altKey) return;
    const act = {
      "+": acts.in, "=": acts.in, "-": acts.out, "_": acts.out, "−": acts.out, Home: acts.whole,
      ArrowLeft: () => step(e.shiftKey ? -10 : -1), ArrowRight: () => step(e.shiftKey ? 10 : 1)
    }[e.key];
    if (act) { e.preventDefault(); act(); }
  });

  const fingers = new Map();
  const place = () => stage.querySelector(".plot-cell").getBoundingClientRect();
  const timeAt = (x, of = view) => { const r = place(); return of.from + (x - r.left) / r.width * (of.to - of.from); };
  let began = null;
  const select = (a, b) => {
    all(".plot-range").forEach(e => e.remove());
    if (a === null) return;
    for (const e of all(".plot-panel .plot-time")) {
      const range = svg(e, "rect", "plot-range"), x = columnOf(Math.min(a, b));
      range.setAttribute("x", x); range.setAttribute("width", columnOf(Math.max(a, b)) - x); range.setAttribute("height", e.viewBox.baseVal.height);
    }
  };
  /** What a gesture starts from: the stretch as it stands, and where the fingers are. */
  const begin = () => { began = fingers.size ? { view: { ...view }, at: [...fingers.values()], moved: false } : null; };
  stage.addEventListener("pointerdown", e => {
    if (e.button !== 0 || (e.pointerType !== "touch" && !e.target.closest(".plot-cell"))) return;
    fingers.set(e.pointerId, e.clientX);
    begin();
  });
  stage.addEventListener("pointermove", e => {
    if (!fingers.has(e.pointerId)) {
      if (e.pointerType === "mouse" && e.target.closest(".plot-cell")) point(timeAt(e.clientX));
      return;
    }
    fingers.set(e.pointerId, e.clientX);
    const now = [...fingers.values()], r = place();
    if (!began.moved && now.every((x, i) => Math.abs(x - began.at[i]) < STILL)) return;
    if (!began.moved) { began.moved = true; stage.setPointerCapture(e.pointerId); }
    if (e.pointerType !== "touch") {
      point(timeAt(e.clientX));
      select(timeAt(began.at[0]), limit(timeAt(e.clientX), view.from, view.to));
    } else if (now.length > 1) {
      const [a, b] = began.at.slice(0, 2).map(x => timeAt(x, began.view)), apart = Math.max(20, Math.abs(now[1] - now[0]));
      const span = Math.abs(b - a) / apart * r.width, left = (Math.min(now[0], now[1]) - r.left) / r.width;
      show(Math.min(a, b) - left * span, Math.min(a, b) + (1 - left) * span);
    } else if (isPart()) {
      const by = (began.at[0] - now[0]) / r.width * (began.view.to - began.view.from);
      show(began.view.from + by, began.view.to + by);
    } else {
      point(timeAt(e.clientX));
    }
  });
  const lift = e => {
    if (!fingers.has(e.pointerId)) return;
    const x = e.clientX, { at, moved } = began;
    fingers.delete(e.pointerId);
    select(null);
    if (e.type === "pointerup" && !moved) point(timeAt(x));
    if (e.type === "pointerup" && moved && e.pointerType !== "touch") {
      const [a, b] = [timeAt(at[0]), limit(timeAt(x), view.from, view.to)].sort((p, q) => p - q);
      show(a, b, 0);
    }
    begin();
    if (stage.classList.contains("is-moving")) { clearTimeout(timer); timer = setTimeout(fetchIt, 150); }
  };
  stage.addEventListener("pointerup", lift);
  stage.addEventListener("pointercancel", lift);
  stage.addEventListener("pointerleave", e => { if (e.pointerType === "mouse" && fingers.size === 0 && document.activeElement !== stage) point(null); });
  stage.addEventListener("dragstart", e => e.preventDefault());
  stage.addEventListener("dblclick", e => { if (e.target.closest(".plot-cell")) zoom(0.5, timeAt(e.clientX)); });
  stage.addEventListener("wheel", e => {
    if (!e.target.closest(".plot-cell")) return;
    const sideways = e.shiftKey ? e.deltaY || e.deltaX : Math.abs(e.deltaX) > Math.abs(e.deltaY) ? e.deltaX : 0;
    if (e.ctrlKey) { e.preventDefault(); zoom(limit(Math.exp(e.deltaY / 200), 0.5, 2), timeAt(e.clientX)); }
    else if (sideways && isPart()) { e.preventDefault(); move(sideways / place().width * (view.to - view.from)); }
  }, { passive: false });

  take();
}
