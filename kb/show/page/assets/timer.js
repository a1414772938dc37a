"use strict";
// Keeps the pace of a session: what to do now in figures that are read from three metres, beeps, and a spoken count
// where the device can. Time is the clock's, not a counter's, so a locked screen or a reload loses nothing.
(() => {
  const beats = [...document.querySelectorAll(".pace li")].map((item) => ({
    at: Number(item.dataset.at), length: Number(item.dataset.for), say: item.textContent, block: item.closest("[data-block]"),
  }));
  const place = document.getElementById("timer");
  if (!place || !beats.length) return;
  const part = (id) => document.getElementById(id);
  const KEY = `drillpath-timer ${location.pathname}`, END = beats.at(-1).at + beats.at(-1).length;
  // either running since a moment of the clock, or stopped at a second of the session
  let state = { since: null, stopped: 0 };
  try { state = { ...state, ...JSON.parse(localStorage.getItem(KEY) ?? "{}") }; } catch { /* nothing was kept */ }
  const keep = () => { try { localStorage.setItem(KEY, JSON.stringify(state)); } catch { /* nothing can be kept */ } };
  const at = () => Math.min(END, state.since === null ? state.stopped : (Date.now() - state.since) / 1000);
  const clock = (seconds) => `${Math.floor(seconds / 60)}:${String(Math.floor(seconds % 60)).padStart(2, "0")}`;

  let sound = null, lock = null;
  const beep = (pitch) => {
    if (!part("beeps").checked || !sound) return;
    const tone = sound.createOscillator(), gain = sound.createGain();
    tone.frequency.value = pitch;
    gain.gain.setValueAtTime(0.25, sound.currentTime);
    gain.gain.exponentialRampToValueAtTime(0.001, sound.currentTime + 0.18);
    tone.connect(gain).connect(sound.destination);
    tone.start();
    tone.stop(sound.currentTime + 0.2);
  };
  const speak = (words) => {
    if (!part("aloud").checked || !("speechSynthesis" in window)) return;
    speechSynthesis.cancel();
    speechSynthesis.speak(new SpeechSynthesisUtterance(words));
  };
  const awake = async () => { try { lock = await navigator.wakeLock?.request("screen"); } catch { /* the screen may sleep; the time goes on */ } };

  let shown = -1, counted = -1;
  const show = () => {
    const now = at(), n = now >= END ? beats.length : beats.findLastIndex((beat) => beat.at <= now), beat = beats[n];
    place.classList.toggle("over", n >= beats.length);
    if (!beat) {
      part("now").textContent = "Done";
      part("left").textContent = clock(END);
      part("say").textContent = part("next").textContent = "";
      if (shown !== n && state.since !== null) { stop(); beep(660); }
      shown = n;
      return;
    }
    const left = Math.ceil(beat.at + beat.length - now - 0.001);
    part("now").textContent = beat.block.dataset.block;
    part("left").textContent = clock(left);
    part("say").textContent = beat.say;
    const next = beats[n + 1];
    part("next").textContent = `${clock(now)} of ${clock(END)}${next ? `, then: ${next.block === beat.block ? next.say : next.block.dataset.block}` : ""}`;
    if (n !== shown) {
      for (const each of document.querySelectorAll(".card.current")) each.classList.remove("current");
      beat.block.classList.add("current");
      if (state.since !== null && shown !== -1) { beep(880); speak(beat.say); }
      shown = n;
    } else if (state.since !== null && left <= 3 && left !== counted && beat.length > 5) {
      beep(440);
      counted = left;
    }
  };
  const stop = () => {
    state = { since: null, stopped: at() };
    part("go").textContent = state.stopped >= END ? "Again" : state.stopped ? "Go on" : "Start";
    lock?.release().catch(() => undefined);
    keep();
  };
  const start = () => {
    const from = state.stopped >= END ? 0 : state.stopped;
    state = { since: Date.now() - from * 1000, stopped: from };
    part("go").textContent = "Pause";
    sound ??= "AudioContext" in window ? new AudioContext() : null;
    sound?.resume();
    awake();
    keep();
    const beat = beats.findLast((each) => each.at <= from);
    speak(beat ? beat.say : "");
    show();
  };
  const jump = (seconds) => {
    const to = Math.max(0, Math.min(END, seconds));
    state = state.since === null ? { since: null, stopped: to } : { since: Date.now() - to * 1000, stopped: to };
    keep();
    show();
  };
  part("go").addEventListener("click", () => (state.since === null ? start() : stop()));
  part("on").addEventListener("click", () => jump(beats.find((beat) => beat.at > at() + 0.01)?.at ?? END));
  part("back").addEventListener("click", () => jump(beats.findLast((beat) => beat.at < at() - 1)?.at ?? 0));
  document.addEventListener("visibilitychange", () => { if (!document.hidden) { show(); if (state.since !== null) awake(); } });
  place.hidden = false;
  part("go").textContent = state.since !== null ? "Pause" : state.stopped ? "Go on" : "Start";
  show();
  setInterval(show, 200);
})();
