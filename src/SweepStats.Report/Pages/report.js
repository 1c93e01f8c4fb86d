// What the page does beyond being read: values at a frequency, zoom, sorted tables. Without it nothing is missing but comfort.
(() => {
  "use strict";
  const SVG = "http://www.w3.org/2000/svg";
  const inOrder = new Intl.Collator("en", { numeric: true });
  const UNITS = { Hz: 1, kHz: 1e3, MHz: 1e6, GHz: 1e9 };
  const CLOSEST = 0.02;
  const DRAGGED = 12;

  function made(name, attributes, text) {
    const element = document.createElement(name);
    Object.entries(attributes).forEach(([key, value]) => element.setAttribute(key, value));
    element.textContent = text || "";
    return element;
  }

  function drawn(name, attributes, text) {
    const element = document.createElementNS(SVG, name);
    Object.entries(attributes).forEach(([key, value]) => element.setAttribute(key, value));
    element.textContent = text || "";
    return element;
  }

  // Tables: a button in each head of a column.

  function key(cell) {
    const text = cell.textContent.trim();
    const found = /^[≥≤<>\s]*([−-]?\d+(?:\.\d+)?)\s*([kMG]?Hz)?/.exec(text);
    const number = found ? Number(found[1].replace("−", "-")) * (UNITS[found[2]] || 1) : NaN;
    return { text, number, silent: /^(–|no claim|cannot be told|not known)?$/.test(text) };
  }

  function compared(one, other, turn) {
    if (one.silent || other.silent) {
      return one.silent - other.silent;
    }
    const numbers = one.number - other.number;
    return turn * (numbers || inOrder.compare(one.text, other.text));
  }

  function sort(table, column, turn) {
    const body = table.tBodies[0];
    const rows = [...body.rows].map(row => ({ row, key: key(row.cells[column]) }));
    rows.sort((a, b) => compared(a.key, b.key, turn)).forEach(entry => body.append(entry.row));
    [...table.tHead.rows[0].cells].forEach((head, i) => i === column
      ? head.setAttribute("aria-sort", turn > 0 ? "ascending" : "descending") : head.removeAttribute("aria-sort"));
  }

  function sortable(table) {
    [...table.tHead.rows[0].cells].forEach((head, column) => {
      if (!head.textContent.trim() || table.tBodies[0].rows[0].cells[column]?.querySelector("svg")) {
        return;
      }
      const button = made("button", { type: "button", class: "sort" }, head.textContent);
      button.addEventListener("click", () => sort(table, column, head.getAttribute("aria-sort") === "ascending" ? -1 : 1));
      head.replaceChildren(button);
    });
  }

  // Pictures: what is known at a frequency, and a part of the band by itself.

  function picture(svg) {
    const [left, top, right, bottom, start, stop, log, low, high] = svg.dataset.plot.split(" ").map(Number);
    const data = JSON.parse(svg.parentElement.querySelector("script").textContent);
    data.rows.forEach(row => { row.at = row.at.split(" "); });
    const caption = svg.parentElement.querySelector("figcaption");
    return { svg, left, top, right, bottom, start, stop, log, low, high, data, caption, named: caption.textContent };
  }

  function share(p, f) {
    return p.start === p.stop ? 0.5 : p.log ? Math.log(f / p.start) / Math.log(p.stop / p.start) : (f - p.start) / (p.stop - p.start);
  }

  function frequency(p, part) {
    return p.log ? p.start * (p.stop / p.start) ** part : p.start + (p.stop - p.start) * part;
  }

  function across(p, view, f) {
    return p.left + (p.right - p.left) * (share(p, f) - view.from) / (view.to - view.from);
  }

  function up(p, level) {
    return p.bottom - (p.bottom - p.top) * (Math.min(p.high, Math.max(p.low, level)) - p.low) / (p.high - p.low);
  }

  function nearest(p, f) {
    const away = p.data.mhz.map(at => Math.abs(Math.log(at / f)));
    return away.indexOf(Math.min(...away));
  }

  function signed(text) {
    return text.replace("-", "−");
  }

  function inUnits(mhz) {
    const [unit, size] = mhz >= 1000 ? ["GHz", 1000] : mhz >= 1 ? ["MHz", 1] : mhz >= 1e-3 ? ["kHz", 1e-3] : ["Hz", 1e-6];
    return `${Number((mhz / size).toPrecision(5))} ${unit}`;
  }

  // "41.2,40.1,42.3" is a value with its interval, "38.1+" a bound, "40.2?" a value without interval, "-" nothing.
  function read(token) {
    const [value, low, high] = token.replace(/[+?]$/, "").split(",");
    return { value: Number(value), low: Number(low || value), high: high === "" ? Infinity : Number(high || low || value),
      text: [value, low, high].map(part => part && signed(part)), open: token.endsWith("+"), single: token.endsWith("?"), known: token !== "-" };
  }

  function told(row, i) {
    const it = read(row.at[i]);
    const [value, low, high] = it.text;
    if (!it.known) {
      return `${row.name}: nothing known`;
    }
    if (row.kind === "range") {
      return `${row.name}: ${value} to ${low} dB${it.open ? " or more" : ""}`;
    }
    return row.kind === "asked" ? `${row.name}: ${value} dB` : `${row.name}: ${it.open ? "≥ " : ""}${value} dB`
      + (it.single ? ", no interval" : low ? ` (${low} ${high ? `to ${high} dB` : "dB or more"})` : "");
  }

  function line(p, view, row, points) {
    let path = "";
    let before = -1;
    points.forEach(i => {
      const it = read(row.at[i]);
      if (it.known && !(it.open && row.kind === "value")) {
        const parted = before !== i - 1 || p.data.gaps.some(([a, b]) => p.data.mhz[i - 1] <= a && p.data.mhz[i] >= b);
        path += `${parted ? "M" : "L"}${across(p, view, p.data.mhz[i]).toFixed(1)} ${up(p, it.value).toFixed(1)}${parted ? "h0" : ""}`;
        before = i;
      }
    });
    return path;
  }

  function bars(p, view, row, points) {
    const half = Math.max(0.7, (p.right - p.left) / Math.max(1, points.length) / 2);
    return points.map(i => {
      const it = read(row.at[i]);
      const [low, high] = row.kind === "range" ? [it.value, it.low] : [it.low, it.high];
      const x = across(p, view, p.data.mhz[i]);
      const [a, b] = [Math.max(p.left, x - half), Math.min(p.right, x + half)].map(v => v.toFixed(1));
      return !it.known || row.kind !== "range" && (it.open || it.single) ? "" : `M${a} ${up(p, high).toFixed(1)}H${b}V${up(p, low).toFixed(1)}H${a}Z`;
    }).join("");
  }

  function arrows(p, view, row, points) {
    return points.filter(i => read(row.at[i]).open).map(i =>
      `M${across(p, view, p.data.mhz[i]).toFixed(1)} ${up(p, read(row.at[i]).value).toFixed(1)}v-11m-3 4l3 -4l3 4`).join("");
  }

  function part(p, view) {
    const layer = drawn("g", { class: "view" });
    const points = p.data.mhz.map((f, i) => i).filter(i => share(p, p.data.mhz[i]) >= view.from && share(p, p.data.mhz[i]) <= view.to);
    const add = (kind, d) => d && layer.append(drawn("path", { class: kind, d }));
    const range = p.data.rows.find(row => row.kind === "range") || p.data.rows[0];
    add("range", bars(p, view, range, points));
    p.data.rows.filter(row => row.kind !== "range").forEach(row => add(row.kind === "asked" ? "asked" : "line", line(p, view, row, points)));
    add("arrow", arrows(p, view, p.data.rows[0], points));
    add("axis", `M${p.left} ${p.bottom}H${p.right}`);
    [[0, "start"], [0.5, "middle"], [1, "end"]].forEach(([at, anchor]) => layer.append(drawn("text",
      { x: p.left + (p.right - p.left) * at, y: p.bottom + 18, "text-anchor": anchor },
      inUnits(frequency(p, view.from + (view.to - view.from) * at)))));
    return layer;
  }

  // Levels stay as they are; all else is drawn anew for the part.
  function zoom(p, view) {
    p.svg.querySelector(".view")?.remove();
    const whole = view.from === 0 && view.to === 1;
    [...p.svg.children].filter(c => !c.classList.contains("grid") && !(c.tagName === "text" && c.getAttribute("y") <= p.bottom + 5 && !c.classList.contains("named")))
      .forEach(c => { c.style.display = whole ? "" : "none"; });
    if (!whole) {
      p.svg.append(part(p, view));
    }
  }

  function mark(p, view, f) {
    p.svg.querySelector(".cursor")?.remove();
    const i = nearest(p, f);
    const x = across(p, view, p.data.mhz[i]);
    if (x >= p.left - 1 && x <= p.right + 1) {
      p.svg.append(drawn("path", { class: "cursor", d: `M${x.toFixed(1)} ${p.top}V${p.bottom}` }));
    }
    return i;
  }

  function reader(group) {
    const pictures = [...group.querySelectorAll("svg[data-plot]")].map(picture);
    const alone = group.matches("figure");
    const first = pictures[0];
    const view = { from: 0, to: 1 };
    const slider = made("input", { type: "range", step: 1, min: 0, max: first.data.mhz.length - 1, value: 0, "aria-label": "Frequency" });
    const said = made("output", {}, "");

    function show(f) {
      const places = pictures.map(p => mark(p, view, f));
      const at = inUnits(first.data.mhz[places[0]]);
      slider.value = places[0];
      const values = alone ? first.data.rows.map(row => told(row, places[0])).join("; ") : "";
      said.textContent = alone ? `${at}. ${values}` : at;
      slider.setAttribute("aria-valuetext", said.textContent);
      if (!alone) {
        pictures.forEach((p, k) => { p.caption.textContent = told(p.data.rows[0], places[k]); });
      }
    }

    function look(from, to) {
      view.from = Math.max(0, Math.min(from, 1 - CLOSEST));
      view.to = Math.min(1, Math.max(to, view.from + CLOSEST));
      const inside = first.data.mhz.map((f, i) => i).filter(i => share(first, first.data.mhz[i]) >= view.from && share(first, first.data.mhz[i]) <= view.to);
      slider.min = inside.length ? inside[0] : 0;
      slider.max = inside.length ? inside[inside.length - 1] : first.data.mhz.length - 1;
      pictures.forEach(p => zoom(p, view));
      show(first.data.mhz[slider.value]);
    }

    function closer(times) {
      const centre = times === 0 ? 0.5 : share(first, first.data.mhz[slider.value]);
      const half = times === 0 ? 1 : (view.to - view.from) * times / 2;
      look(Math.min(centre - half, 1 - 2 * half), Math.max(centre + half, 2 * half));
    }

    function pointed(p, event) {
      const box = p.svg.getBoundingClientRect();
      const x = (event.clientX - box.left) * p.svg.viewBox.baseVal.width / box.width;
      return view.from + (view.to - view.from) * Math.min(1, Math.max(0, (x - p.left) / (p.right - p.left)));
    }

    pictures.forEach(p => {
      let from = null;
      p.svg.addEventListener("pointerdown", event => { from = { x: event.clientX, at: pointed(p, event) }; });
      p.svg.addEventListener("pointermove", event => show(frequency(p, pointed(p, event))));
      p.svg.addEventListener("pointerup", event => {
        const ends = from && Math.abs(event.clientX - from.x) > DRAGGED ? [from.at, pointed(p, event)].sort((a, b) => a - b) : null;
        from = null;
        if (ends) {
          look(...ends);
        }
      });
    });
    // Paper shows the whole, whatever was looked at.
    addEventListener("beforeprint", () => {
      look(0, 1);
      pictures.filter(() => !alone).forEach(p => { p.caption.textContent = p.named; });
    });
    slider.addEventListener("input", () => show(first.data.mhz[slider.value]));

    const controls = made("div", { class: "reader" });
    const label = made("label", {}, "Values at a frequency ");
    label.append(slider);
    controls.append(label);
    [["Zoom in", 1 / 3], ["Zoom out", 3], ["Whole band", 0]].forEach(([name, times]) => {
      const button = made("button", { type: "button" }, name);
      button.addEventListener("click", () => closer(times));
      controls.append(button);
    });
    controls.append(said);
    if (alone) {
      pictures[pictures.length - 1].svg.after(controls);
    } else {
      group.before(controls);
    }
  }

  document.querySelectorAll("table").forEach(table => table.tHead && table.tBodies[0]?.rows.length > 2 && sortable(table));
  document.querySelectorAll(".read").forEach(reader);
})();
