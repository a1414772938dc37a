"use strict";
// In a copy in a folder nobody answers at the form's address: the prepared page for what was chosen is opened instead.
(() => {
  const form = document.getElementById("ask"), up = document.body.dataset.up;
  if (!form || document.body.dataset.static !== "yes") return;
  const asked = new URLSearchParams(location.search);
  for (const field of form.querySelectorAll("select, input")) if (asked.has(field.name)) field.value = asked.get(field.name);
  // which page answers what is a list of its own, fetched when it is needed
  const listed = () => new Promise((done) => {
    if (window.drillpathChains) return done();
    const script = document.createElement("script");
    script.src = `${up}assets/chains.js`;
    script.onload = script.onerror = done;
    document.head.append(script);
  });
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    await listed();
    const said = new FormData(form), fault = said.get("fault"), lift = said.get("lift"), kit = said.get("kit") || "full";
    const chains = window.drillpathChains ?? {};
    const key = Object.keys(chains).find((each) => {
      const [its, , at, with_] = each.split(" ");
      return its === fault && with_ === kit && (!lift || at === lift);
    });
    location.href = up + (key ? `chain/${encodeURIComponent(chains[key])}.html` : `fault/${encodeURIComponent(fault)}.html`);
  });
})();
