"use strict";
// Draws a lift's graph from places that came with it; a drill's neighbourhood stands out when it is chosen.
(() => {
  const data = window.drillpathGraph;
  const place = document.getElementById("graph");
  if (!data || !window.vis || !place) return;
  const css = getComputedStyle(document.documentElement);
  const colour = (name) => css.getPropertyValue(name).trim();
  const ink = colour("--ink"), paper = colour("--paper"), quiet = colour("--quiet"), rule = colour("--rule"), band = colour("--band");
  place.hidden = false;
  const shapes = { prepare: "ellipse", position: "box", segment: "box", join: "box", whole: "box", finish: "ellipse" };
  const plain = (node) => ({
    ...node, shape: shapes[node.group], group: undefined, margin: 6, borderWidth: node.group === "whole" ? 3 : 1,
    color: { background: paper, border: ink, highlight: { background: paper, border: band } },
    font: { color: ink, size: 15, face: "system-ui, sans-serif" }, shapeProperties: { borderRadius: 2, borderDashes: node.group === "position" ? [4, 3] : false },
  });
  const nodes = new vis.DataSet(data.nodes.map(plain));
  const edges = new vis.DataSet(data.edges.map((edge, id) => ({ ...edge, id, color: quiet })));
  const still = matchMedia("(prefers-reduced-motion: reduce)").matches;
  const network = new vis.Network(place, { nodes, edges }, {
    physics: false, interaction: { dragNodes: false, hover: false, keyboard: { enabled: true, bindToWindow: false }, navigationButtons: false },
    edges: { arrows: { to: { enabled: true, scaleFactor: 0.5 } }, width: 1, smooth: { type: "cubicBezier", forceDirection: "vertical", roundness: 0.4 } },
    layout: { improvedLayout: false },
  });
  // begin where a lift begins, large enough to read, not with everything at once
  const first = data.nodes.reduce((least, node) => (node.y < least.y || (node.y === least.y && node.x < least.x) ? node : least));
  const scale = place.clientWidth < 600 ? 0.75 : 0.7;
  network.moveTo({ position: { x: first.x - 110 + place.clientWidth / 2 / scale, y: first.y - 40 + place.clientHeight / 2 / scale }, scale });
  place.tabIndex = 0;
  place.setAttribute("role", "application");
  place.setAttribute("aria-label", "Drawing of the drills; arrow keys move it, plus and minus change its size. The same stands as a list below.");
  const told = document.getElementById("told");
  const show = (id) => {
    const near = new Set([id, ...network.getConnectedNodes(id)]);
    nodes.update(data.nodes.map((node) => ({ id: node.id, opacity: near.has(node.id) ? 1 : 0.18, borderWidth: node.id === id ? 4 : node.group === "whole" ? 3 : 1 })));
    edges.update(edges.get().map((edge) => ({ id: edge.id, color: edge.from === id || edge.to === id ? band : rule, width: edge.from === id || edge.to === id ? 2 : 1 })));
    network.focus(id, { scale: Math.max(network.getScale(), 0.8), animation: !still });
    const node = data.nodes.find((each) => each.id === id);
    told.replaceChildren();
    const link = document.createElement("a");
    link.href = document.querySelector(`#${CSS.escape(id)} a`).href;
    link.textContent = node.title;
    told.append("Chosen: ", link);
  };
  const all = () => {
    nodes.update(data.nodes.map((node) => ({ id: node.id, opacity: 1, borderWidth: node.group === "whole" ? 3 : 1 })));
    edges.update(edges.get().map((edge) => ({ id: edge.id, color: quiet, width: 1 })));
    told.replaceChildren();
  };
  network.on("click", (event) => (event.nodes.length ? show(event.nodes[0]) : all()));
  const form = document.getElementById("search"), field = document.getElementById("node"), list = document.getElementById("drills");
  for (const node of data.nodes) {
    const option = document.createElement("option");
    option.value = node.title;
    list.append(option);
  }
  form.hidden = false;
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    const said = field.value.trim().toLowerCase();
    const found = said && (data.nodes.find((node) => node.title.toLowerCase() === said) || data.nodes.find((node) => node.title.toLowerCase().includes(said)));
    if (found) { network.selectNodes([found.id]); show(found.id); } else { all(); told.textContent = said ? "No drill of this lift is called that." : ""; }
  });
})();
