"use strict";
// Only improves what is there: a button that prints, the page's address on paper, and the pages kept for when there is no signal.
for (const button of document.querySelectorAll("[data-print]")) {
  button.hidden = false;
  button.addEventListener("click", () => window.print());
}
if (document.querySelector("[data-print]") && document.body.dataset.static !== "yes" && navigator.onLine) {
  // on paper, the way back to this page; only a server knows its own address
  const code = document.createElement("img");
  code.className = "qr";
  code.alt = "QR code of this page's address";
  code.width = code.height = 96;
  code.src = `/qr?to=${encodeURIComponent(location.pathname + location.search)}`;
  document.querySelector("main").append(code);
}
if ("serviceWorker" in navigator && location.protocol.startsWith("http")) {
  const worker = navigator.serviceWorker;
  // the rest is fetched once this page is done, and again when a new version has come; not at all for who saves data
  const keep = (active) => { if (!navigator.connection?.saveData) active?.postMessage("keep"); };
  worker.addEventListener("controllerchange", () => keep(worker.controller));
  worker.register(document.body.dataset.up + "sw.js").catch(() => undefined);
  worker.ready.then((kept) => keep(kept.active));
}
