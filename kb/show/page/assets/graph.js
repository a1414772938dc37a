"use strict";
// Draws a lift's graph from places that came with it, or one drill with what it builds on and what builds on it.
// One lift or one neighbourhood at a time: of a very large lift the neighbourhood of a drill comes first.
(() => {
  const data = window.drillpathGraph;
  const place = document.getElementById("graph");
  if (!data || !window.vis || !place) return;
  let shown = [];
  const MANY = 400, ACROSS = 230, DOWN = 100, LOOSE = 90;
  const css = getComputedStyle(document.documentElement);
  const colour = (name) => css.getPropertyValue(name).trim();
  const ink = colour("--ink"), paper = colour("--paper"), quiet = colour("--quiet"), band = colour("--band");
  place.hidden = false;
  const shapes = { prepare: "ellipse", position: "box", segment: "box", join: "box", whole: "box", finish: "ellipse" };
  const plain = (node) => ({
    ...node, shape: shapes[node.group], group: undefined, margin: 6, borderWidth: node.group === "whole" ? 3 : 1,
    color: { background: paper, border: ink, highlight: { background: paper, border: band } },
    font: { color: ink, size: 15, face: "system-ui, sans-serif" }, shapeProperties: { borderRadius: 2, borderDashes: node.group === "position" ? [4, 3] : false },
  });
  const byId = new Map(data.nodes.map((node) => [node.id, node])), before = new Map(), after = new Map();
  const add = (table, key, edge) => { if (!table.has(key)) table.set(key, []); table.get(key).push(edge); };
  for (const edge of data.edges) { add(after, edge.from, edge); add(before, edge.to, edge); }
  const network = new vis.Network(place, {}, {
    physics: false, interaction: { dragNodes: false, hover: false, keyboard: { enabled: true, bindToWindow: false }, navigationButtons: false },
    edges: { arrows: { to: { enabled: true, scaleFactor: 0.5 } }, width: 1, smooth: { type: "cubicBezier", forceDirection: "vertical", roundness: 0.4 } },
    layout: { improvedLayout: false },
  });
  const draw = (nodes, edges) => {
    const many = nodes.length > MANY; // thousands of arrows would keep a moving drawing waiting
    network.setOptions({ interaction: { hideEdgesOnDrag: many, hideEdgesOnZoom: many } });
    network.setData({ nodes: new vis.DataSet(nodes), edges: new vis.DataSet(edges) });
    shown = nodes.map(({ id, x, y }) => ({ id, x, y }));
  };
  place.tabIndex = 0;
  place.setAttribute("role", "application");
  place.setAttribute("aria-label", "Drawing of the drills; arrow keys move it, plus and minus change its size. The same stands as a list below.");
  const told = document.getElementById("told"), back = document.getElementById("whole");
  // the whole lift: begin where it begins, large enough to read, not with everything at once
  const whole = () => {
    draw(data.nodes.map(plain), data.edges.map((edge, id) => ({ ...edge, id, color: quiet })));
    const first = data.nodes.reduce((least, node) => (node.y < least.y || (node.y === least.y && node.x < least.x) ? node : least));
    const scale = place.clientWidth < 600 ? 0.75 : 0.7;
    network.moveTo({ position: { x: first.x - 110 + place.clientWidth / 2 / scale, y: first.y - 40 + place.clientHeight / 2 / scale }, scale });
    told.replaceChildren();
    back.hidden = true;
  };
  // one drill: what it builds on stands above it in rows, what builds on it below
  const rows = (ids, from, step) => {
    const across = Math.max(2, Math.floor(place.clientWidth / ACROSS)), spread = Math.ceil(ids.length / Math.ceil(ids.length / across));
    return ids.map((id, n) => {
      const row = Math.floor(n / spread), many = Math.min(spread, ids.length - row * spread);
      return { ...plain(byId.get(id)), x: ACROSS * ((n % spread) - (many - 1) / 2), y: from + step * row };
    });
  };
  const show = (id) => {
    const over = before.get(id) ?? [], under = after.get(id) ?? [];
    const above = [...new Set(over.map((edge) => edge.from))], below = [...new Set(under.map((edge) => edge.to))].filter((each) => !above.includes(each));
    const nodes = [...rows(above, -DOWN - LOOSE / 2, -DOWN), { ...plain(byId.get(id)), x: 0, y: 0, borderWidth: 4 }, ...rows(below, DOWN + LOOSE / 2, DOWN)];
    draw(nodes, [...over, ...under].map((edge, n) => ({ ...edge, id: n, color: band, width: 2 })));
    network.selectNodes([id]);
    network.fit({ maxZoomLevel: 1, animation: false });
    const node = byId.get(id), link = document.createElement("a");
    link.href = document.querySelector(`#${CSS.escape(id)} a`).href;
    link.textContent = node.title;
    told.replaceChildren("Chosen: ", link, `, with ${above.length} that it builds on above and ${below.length} that build on it below.`);
    back.hidden = false;
  };
  network.on("click", (event) => { if (event.nodes.length) show(event.nodes[0]); });
  back.addEventListener("click", () => { whole(); field.focus(); });
  const form = document.getElementById("search"), field = document.getElementById("node"), list = document.getElementById("drills");
  list.append(...data.nodes.map((node) => Object.assign(document.createElement("option"), { value: node.title })));
  form.hidden = false;
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    const said = field.value.trim().toLowerCase();
    const found = said && (data.nodes.find((node) => node.title.toLowerCase() === said) || data.nodes.find((node) => node.title.toLowerCase().includes(said)));
    if (found) show(found.id);
    else if (said) told.textContent = "No drill of this lift is called that.";
    else whole();
  });
  if (data.nodes.length > MANY) show((data.nodes.find((node) => node.group === "whole") ?? data.nodes[0]).id);
  else whole();
  window.drillpathShown = () => shown;
})();
