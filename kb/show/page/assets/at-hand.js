"use strict";
// What can be done with what is ticked, worked out where the page is; the ticks stay in the address and on the device.
(() => {
  const index = window.drillpathIndex, form = document.getElementById("at-hand"), place = document.getElementById("can");
  if (!index || !form || !place) return;
  const { items, drills, kits } = index.gear, KEY = "drillpath-at-hand", MOST = 8;
  const SAID = { prepare: "Prepare", position: "Positions", segment: "Parts", join: "Parts together", whole: "Whole lifts", finish: "Strengthen" };
  const up = document.body.dataset.up, ending = document.body.dataset.static === "yes" ? ".html" : "";
  const count = document.getElementById("count"), button = form.querySelector(".submit button");
  const boxes = [...form.querySelectorAll("input[type=checkbox]")];

  // as kb/kit.py: of several stand-ins the one that leaves most load, then by name; over all things the lowest cap
  const fit = (drill, have) => {
    const using = new Map();
    let load = 3;
    for (const item of drill[4]) {
      if (have.has(item)) continue;
      const there = items[item][1].filter(([each]) => have.has(each)).sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1));
      if (!there.length) return null;
      const instead = items[there[0][0]][0].toLowerCase();
      using.set(instead, [...(using.get(instead) ?? []), items[item][0].toLowerCase()]);
      load = Math.min(load, there[0][1]);
    }
    return drill[3] <= load ? using : null;
  };
  const listed = (words) => (words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`);
  const said_ = (using) => [...using].map(([instead, its]) => `${instead} for ${listed(its)}`).join("; ");
  const element = (name, text, kind) => {
    const made = document.createElement(name);
    if (text) made.textContent = text;
    if (kind) made.className = kind;
    return made;
  };
  const linked = (kind, id, words, beside) => {
    const item = element("li"), link = element("a", words);
    link.href = `${up}${kind}/${encodeURIComponent(id)}${ending}`;
    item.append(link);
    if (beside) item.append(" ", element("span", beside, "beside"));
    return item;
  };
  const opened = new Set(["more"]); // parts of the list that whoever looks has open
  const part = (name, title, entries, kind) => {
    const details = element("details"), list = element("ul", "", "links");
    details.open = opened.has(name);
    details.addEventListener("toggle", () => opened[details.open ? "add" : "delete"](name));
    list.append(...entries);
    details.append(element("summary", title, kind), list);
    return details;
  };
  window.drillpathCan = (ids) => drills.filter((drill) => fit(drill, new Set(ids))).map((drill) => drill[0]);
  const show = () => {
    const have = new Set(boxes.filter((box) => box.checked).map((box) => box.value));
    const can = drills.map((drill) => [drill, fit(drill, have)]).filter(([, using]) => using);
    const faults = new Set(can.flatMap(([drill]) => drill[5]));
    const section = element("section"), heading = element("h2", "With these ");
    heading.append(element("span", `${can.length} drills, working on ${faults.size} faults`, "beside"));
    section.append(heading);
    for (const [stage, said] of Object.entries(SAID)) {
      const its = can.filter(([drill]) => drill[2] === stage);
      if (its.length) section.append(part(stage, `${said} (${its.length})`, its.map(([drill, using]) => linked("drill", drill[0], drill[1], said_(using)))));
    }
    const more = Object.keys(items).filter((item) => !have.has(item)).map((item) => {
      const with_ = new Set([...have, item]);
      return [item, drills.filter((drill) => fit(drill, with_)).length - can.length];
    }).filter(([, count]) => count > 0).sort((a, b) => b[1] - a[1] || (items[a[0]][0] < items[b[0]][0] ? -1 : 1)).slice(0, MOST);
    if (more.length) section.append(part("more", "One more thing would open", more.map(([item, count]) => linked("equipment", item, items[item][0], count > 1 ? `${count} more drills` : "1 more drill")), "lack"));
    place.replaceChildren(section);
    button.textContent = `Show the ${can.length} drills`;
    count.textContent = `${can.length} drills can be done`;
  };
  const keep = () => {
    const ticked = boxes.filter((box) => box.checked).map((box) => box.value);
    const address = new URL(location.href);
    address.search = ticked.length ? `?have=${ticked.join(",")}` : "";
    try { history.replaceState(null, "", address); } catch { /* a page from a folder may not change its address */ }
    try { localStorage.setItem(KEY, ticked.join(",")); } catch { /* nothing can be kept here */ }
  };
  const tick = (ids) => { for (const box of boxes) box.checked = ids.includes(box.value); };
  const choose = element("p", "", "choose");
  for (const kit of Object.keys(kits)) {
    const button = element("button", kit, "go");
    button.type = "button";
    button.addEventListener("click", () => { tick(kits[kit]); keep(); show(); });
    choose.append(button, " ");
  }
  form.prepend(choose);
  form.addEventListener("change", () => { keep(); show(); });
  form.addEventListener("submit", (event) => { event.preventDefault(); keep(); show(); place.scrollIntoView(); });
  const asked = new URLSearchParams(location.search).getAll("have").join(",");
  let kept = "";
  try { kept = localStorage.getItem(KEY) ?? ""; } catch { /* nothing was kept */ }
  // a kit's own page shows the kit, whatever was ticked before
  if (boxes.some((box) => box.checked) && !asked) kept = "";
  if (asked || kept) { tick((asked || kept).split(",")); show(); }
})();
