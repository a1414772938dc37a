"use strict";
// The search of the pages: the same tables and the same arithmetic as `drillpath find`, run where the page is.
// Nothing is sent anywhere. A test asks both the same questions.
(() => {
  const index = window.drillpathIndex;
  const field = document.getElementById("q"), place = document.getElementById("found");
  if (!index || !field || !place) return;
  const { speech, caution } = index;
  const EMPTY = new Set(speech.empty), HARMLESS = new Set(caution.harmless);
  const NAMED = 3, CAUSED = 0.75, WHOLE = 16, NEAREST = 6, LESS = 0.8, BEST = 1.5, LIFT_WORD = 0.25, PARTICLE = 0.7, ELSEWHERE = 0.95, HERE = 1.05, EXACT = 1.5;
  const OTHER_LIFT = 0.4, READ = 24, MOST = 6, SAME = 0.4, CUE = 0.5, MOST_WORDS = 60, MOST_MENDED = 20, LONGEST = 1000;
  const PARTICLES = ["off", "out", "over", "down", "before", "after", "under"], LIFTS = ["snatch", "clean", "jerk"];

  const fold = (text) => text.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase().replace(/ß/g, "ss").split(/[^\p{L}\p{N}]+/u).filter(Boolean).join(" ");
  const own = (table, key) => (Object.hasOwn(table, key) ? table[key] : undefined);
  const stem = (said) => {
    let word = own(speech.irregular, said) ?? said;
    for (const [ending, instead] of speech.endings)
      if (word.endsWith(ending) && word.length > ending.length + 2) return word.slice(0, -ending.length) + instead;
    for (const ending of ["ing", "ed"])
      if (word.endsWith(ending)) {
        const base = word.slice(0, -ending.length), last = base.at(-1);
        if (base.length > 2 && last !== "e" && /[aeiouy]/.test(base)) {
          if (last === base.at(-2) && (!"sl".includes(last) || base.length > 5)) return last === "s" ? base : base.slice(0, -1);
          return base;
        }
      }
    if (word.endsWith("ly") && word.length > 5) return word.slice(0, -2);
    if (word.endsWith("s") && !/(ss|us)$/.test(word) && word.length > 3) word = word.slice(0, -1);
    return word.endsWith("e") && word.length > 3 && !/(ee|oe)$/.test(word) ? word.slice(0, -1) : word;
  };
  const together = (found) => {
    const joined = [];
    for (let at = 0; at < found.length; at++) {
      const pair = own(speech.pairs, `${found[at]} ${found[at + 1]}`);
      if (pair) at++;
      joined.push(...(pair ?? [found[at]]));
    }
    return joined;
  };

  // spelling
  const LETTERS = [..."abcdefghijklmnopqrstuvwxyz"];
  const oneEdit = (word, known) => {
    const found = new Map(), put = (each, worth) => known.has(each) && found.set(each, worth);
    for (let n = 0; n < word.length; n++) for (const l of LETTERS) put(word.slice(0, n) + l + word.slice(n + 1), 0.6);
    for (let n = 0; n <= word.length; n++) for (const l of LETTERS) put(word.slice(0, n) + l + word.slice(n), 0.85);
    for (let n = 0; n < word.length; n++) put(word.slice(0, n) + word.slice(n + 1), 0.85);
    for (let n = 0; n + 1 < word.length; n++) put(word.slice(0, n) + word[n + 1] + word[n] + word.slice(n + 2), 0.9);
    return [...found];
  };
  const SOUND = { c: "k", k: "k", q: "k", z: "s", v: "f" };
  const sound = (word) => {
    const rest = [...word.replaceAll("ph", "f").replaceAll("gh", "")].map((l) => SOUND[l] ?? l);
    const kept = [...rest.slice(0, 1), ...rest.slice(1).filter((l) => !"aeiouyhw".includes(l))];
    return kept.filter((l, n) => n === 0 || kept[n - 1] !== l).join("");
  };
  const near = (word, known) => {
    let edits = [];
    if (word.length > 3 && word.length < 24) edits = oneEdit(word, known);
    else if (word.length === 3) edits = oneEdit(word, known).filter(([a, w]) => w === 0.85 && a.length === 4);
    let found = edits.filter(([each]) => each.length > 2);
    if (!found.length && word.length > 4 && word.length < 24) {
      const said = sound(word);
      if (said.length > 2)
        found = [...known.keys()].filter((e) => e[0] === word[0] && Math.abs(e.length - word.length) < 3 && e.length > 3 && sound(e) === said).map((e) => [e, 0.75]);
    }
    return found.sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1)).slice(0, 3);
  };
  const oneApart = (a, b) => {
    if (a === b || Math.abs(a.length - b.length) > 1) return false;
    const [short, long] = a.length <= b.length ? [a, b] : [b, a];
    let at = [...short].findIndex((letter, n) => letter !== long[n]);
    if (at < 0) at = short.length;
    if (short.length < long.length) return short.slice(at) === long.slice(at + 1);
    return short.slice(at + 1) === long.slice(at + 1) || (short[at] === long[at + 1] && short[at + 1] === long[at] && short.slice(at + 2) === long.slice(at + 2));
  };

  // pain, injury, illness, pregnancy, a child: whom to ask, and nothing else
  const trouble = new RegExp(caution.word), phrase = new RegExp(caution.phrase);
  const misspelt = (word) => word.length > 4 && word.length < 21 && !HARMLESS.has(word) && caution.spelt.some((s) => s[0] === word[0] && oneApart(word, s));
  const troubled = (folded) => phrase.test(folded) || folded.split(" ").some((word) => trouble.test(word) || misspelt(word));
  const left = (text, ...patterns) => patterns.reduce((each, pattern) => each.replace(new RegExp(pattern, "g"), " "), text).split(" ").filter(Boolean).join(" ");
  // the caution due, and the words that are answered after it: pain denied is none, and what is long ago, or the hook's squeeze, doesn't stop the rest
  const told = (word) => trouble.test(word) || misspelt(word);
  const isCleared = (said) => new RegExp(caution.cleared).test(said) && !new RegExp(caution.uncleared).test(said);
  const untroubled = (said) => left(said, caution.phrase).split(" ").filter((word) => !told(word)).join(" ");
  const neverCleared = (said) => new RegExp(caution.never).test(said) || said.split(" ").some((word) => caution.neverSpelt.some((each) => oneApart(word, each)));
  const careOf = (text, cleared) => {
    const [care, rest, said] = reading(text);
    if (care !== caution.says || rest !== null || neverCleared(said)) return [care, rest, false];
    const more = untroubled(said);
    return cleared && more ? [care, more, false] : [care, null, Boolean(more)];
  };
  const reading = (typed) => {
    const grown = typed.replace(new RegExp(caution.grownInYear, "gi"), "$1");
    const text = grown.replace(new RegExp(caution.namedChild, "g"), " a child ").replace(new RegExp(caution.namedYouth, "g"), " 17 years old "), folded = fold(text);
    if (new RegExp(caution.atOnce).test(folded)) return [caution.urgent, null, folded];
    if (!troubled(folded)) return [null, text, folded];
    const hedged = new RegExp(caution.hedged), split = text.split(new RegExp(caution.sentence, "i")).map(fold), doubtful = split.some((part) => hedged.test(part));
    const parts = doubtful ? split : split.map((part) => left(part, caution.denied)), said = doubtful ? folded : left(folded, caution.denied);
    if (!troubled(said)) return [null, said, said];
    const has = (pattern) => new RegExp(pattern).test(said);
    if (has(caution.sameDay)) return [caution.today, null, said];
    const ill = parts.map(troubled), near = parts.filter((part, n) => ill[n] || ill[n - 1] || ill[n + 1]);
    const says = [];
    let more = said;
    for (const [care, speaks, trouble, stays] of caution.minors) {
      const without = left(more, trouble);
      if (without !== more && has(speaks) && !new RegExp(stays).test(near.join(" "))) {
        says.push(care);
        more = without;
      }
    }
    if (says.length && more && !troubled(more)) return [says.join(" "), more, said];
    const rest = left(more, caution.mended, caution.mends);
    const settled = (isCleared(said) || (has(caution.mended) && !parts.some((part) => troubled(part) && new RegExp(caution.unsettled).test(part)))) && !troubled(rest);
    if (settled && rest) return [[caution.says, ...says].join(" "), rest, said];
    const words = said.split(" "), others = untroubled(said);
    // all of it over, as the sentence that tells it says, or the next
    const isOver = (part, n) => !ill[n] || (new RegExp(caution.over).test(`${part} ${parts[n + 1] || ""}`) && !new RegExp(caution.notOver).test(part) && !new RegExp(caution.stays).test(parts[n + 1] || ""));
    const besides = (pattern) => near.some((part) => new RegExp(pattern).test(part));
    const long = words.length >= caution.leastWords;
    if (long && others && ill.includes(true) && parts.every(isOver) && !besides(caution.signs) && !has(caution.otherwise) && !neverCleared(said)) return [[caution.inPassing, ...says].join(" "), others, said];
    // all of it cleared, or told in passing, in a long question about something else: mild, or of the past
    if (has(caution.hard) || besides(caution.signs)) return [caution.says, null, said];
    if (isCleared(said) && others && !neverCleared(said)) return [caution.says, others, said];
    const mild = new RegExp(caution.mild);
    const troubles = [...(said.match(new RegExp(caution.phrase, "g")) || []), ...words.filter(told)];
    if (!long || besides(caution.vital) || !troubles.every((each) => mild.test(each))) return [caution.says, null, said];
    return [caution.inPassing, others, said];
  };

  // what the words may stand for
  const meanings = new Map();
  for (const group of speech.same) {
    const words = group.split(" ");
    for (const word of words) {
      if (!meanings.has(word)) meanings.set(word, new Set());
      for (const each of words) meanings.get(word).add(each);
    }
  }
  const document_ = ([id, name, lifts, names, words, text, keys]) => {
    const held = new Map();
    for (const [worth, stems] of Object.entries(words)) for (const each of stems.split(" ")) held.set(each, Number(worth));
    return { id, name, lifts, names: names.map((each) => ({ words: each.split(" "), held: 0 })), words: held, text, exact: new Set(keys) };
  };
  const faults = index.faults.map(document_), drills = index.drills.map(document_);
  const known = new Map();
  for (const each of [...faults, ...drills]) for (const word of each.words.keys()) known.set(word, word);
  for (const word of meanings.keys()) known.set(word, word);
  const spellings = new Map(known);
  for (const word of Object.keys(speech.irregular)) spellings.set(word, stem(word));
  for (const word of EMPTY) if (word.length > 3) spellings.set(word, word);
  const parted = (word) => {
    if (word.length > 5 && word.length < 24)
      for (let n = 2; n < word.length - 1; n++) if (spellings.has(word.slice(0, n)) && spellings.has(word.slice(n))) return [word.slice(0, n), word.slice(n)];
    return null;
  };
  const mended = (words) => {
    const found = [];
    let left = MOST_MENDED;
    for (const word of words) {
      const base = stem(word), pair = !EMPTY.has(word) && !known.has(base) ? parted(word) : null;
      if (EMPTY.has(word)) found.push([word, []]);
      else if (known.has(base)) found.push([base, [[base, 1]]]);
      else if (pair) found.push(...pair.map((part) => [stem(part), EMPTY.has(part) ? [] : [[stem(part), 1]]]));
      else if (left) {
        left--;
        const close = new Map([...near(word, spellings), ...near(base, spellings)]);
        let best = word;
        for (const [each, worth] of close) if (!close.has(best) || worth > close.get(best) || (worth === close.get(best) && each > best)) best = each;
        const meant = new Map();
        for (const [each, worth] of close) if (!EMPTY.has(each)) meant.set(spellings.get(each), worth);
        found.push([spellings.get(best) ?? best, EMPTY.has(best) ? [] : [...meant]]);
      }
    }
    return found;
  };
  const heard = (text) => {
    const words = [...new Set(fold(text).split(" ").filter((word) => word.length > 1))].slice(0, MOST_WORDS);
    const meant = mended(words), said = meant.filter(([, each]) => each.length).map(([word]) => word);
    const worths = new Map(meant.filter(([, each]) => each.length));
    const all = new Set([...meant.map(([word]) => word), ...together(said)]);
    const asked = new Map();
    for (const word of together(said)) {
      const spelt = worths.get(word) ?? [[word, 1]];
      const held = new Map(spelt);
      for (const [each, worth] of spelt) for (const same of meanings.get(each) ?? []) held.set(same, Math.max(held.get(same) ?? 0, worth * SAME));
      asked.set(word, held);
    }
    const answered = new Set();
    for (const [cue, fault] of index.cues) if (cue.every((word) => all.has(word))) for (const word of fault) if (!all.has(word)) answered.add(word);
    for (const word of answered) if (!asked.has(word)) asked.set(word, new Map([[word, CUE]]));
    const lifts = new Set(LIFTS.filter((lift) => all.has(lift)));
    if (lifts.has("clean") || lifts.has("jerk")) lifts.add("clean-and-jerk");
    const points = new Set();
    for (const [at, words_] of index.spots) if (words_.every((word) => all.has(word))) for (const point of at) points.add(point);
    return { asked: [...asked.values()], lifts, points };
  };

  // how near each entry is to them
  const rarities = (all, liftWord) => {
    const counts = new Map(), rarity = new Map();
    for (const each of all) for (const word of each.words.keys()) counts.set(word, (counts.get(word) ?? 0) + 1);
    for (const [word, count] of counts) rarity.set(word, Math.log(1 + all.length / count));
    for (const word of LIFTS) if (rarity.has(word)) rarity.set(word, rarity.get(word) * liftWord);
    for (const word of PARTICLES) if (rarity.has(word)) rarity.set(word, rarity.get(word) * PARTICLE);
    return rarity;
  };
  const rarity = { faults: rarities(faults, LIFT_WORD), drills: rarities(drills, 1) };
  // what each name weighs, and which entries hold a word: only those are looked at
  const holding = (all, rare) => {
    const found = new Map();
    for (const each of all) {
      for (const name of each.names) for (const word of name.words) name.held += rare.get(word) ?? 0;
      for (const word of each.words.keys()) {
        if (!found.has(word)) found.set(word, []);
        found.get(word).push(each);
      }
    }
    return found;
  };
  const holders = { faults: holding(faults, rarity.faults), drills: holding(drills, rarity.drills) };
  const among = (held, asked) => {
    const found = new Set();
    for (const word of asked.best.keys()) for (const each of held.get(word) ?? []) found.add(each);
    return [...found];
  };
  const weighed = (words, rare) => {
    const worths = [], best = new Map(), standing = new Map();
    for (const each of words) {
      const kept = [...each].filter(([word]) => rare.has(word)).map(([word, worth]) => [word, worth * rare.get(word)]);
      if (kept.length) worths.push(kept);
      for (const [word, worth] of kept) {
        best.set(word, Math.max(best.get(word) ?? 0, worth));
        // a word that may stand for several of those said counts for each
        if (!standing.has(word)) standing.set(word, []);
        standing.get(word).push([worths.length - 1, worth]);
      }
    }
    return { worths, best, standing, most: new Float64Array(worths.length), rare, said: worths.reduce((sum, each) => sum + Math.max(...each.map(([, worth]) => worth)), 0) };
  };
  const whole = (name, asked) => {
    let fromName = 0;
    for (const word of name.words) {
      const worth = asked.best.get(word);
      if (worth === undefined) continue;
      if (!fromName) asked.most.fill(0);
      fromName += worth;
      for (const [at, each] of asked.standing.get(word)) if (each > asked.most[at]) asked.most[at] = each;
    }
    return fromName ? (asked.most.reduce((sum, each) => sum + each, 0) + fromName) / (asked.said + name.held) : 0;
  };
  const score = (each, asked, more) => {
    let total = 0;
    for (const worths of asked.worths) {
      let most = 0;
      for (const [word, worth] of worths) most = Math.max(most, worth * (each.words.get(word) ?? (more?.has(word) ? CAUSED : 0)));
      total += most;
    }
    let named = 0;
    if (total) {
      const nearest = each.names.map((name) => whole(name, asked)).filter(Boolean).sort((a, b) => b - a).slice(0, NEAREST);
      named = nearest.reduce((sum, near, n) => sum + near * (n ? LESS ** n : BEST), 0);
    }
    return total + WHOLE * named;
  };
  const best = (scored) => {
    const hits = scored.filter(([, worth]) => worth > 0).map(([each, worth]) => [each, Math.round(worth * 1000) / 1000]);
    const top = Math.max(0, ...hits.map(([, worth]) => worth));
    return hits.filter(([, worth]) => worth >= top / 3).sort((a, b) => b[1] - a[1] || (a[0].id < b[0].id ? -1 : 1)).slice(0, MOST);
  };
  const exact = (each, text) => each.exact.has(text);
  const search = (said, cleared) => {
    const [care, rest, mayClear] = careOf(said, cleared);
    if (rest === null) return { caution: care, mayClear, faults: [], drills: [] };
    const text = rest.slice(0, LONGEST), words = heard(text), folded = fold(text);
    const askedFaults = weighed(words.asked, rarity.faults), askedDrills = weighed(words.asked, rarity.drills);
    const scoredFaults = among(holders.faults, askedFaults).map((each) => {
      let worth = score(each, askedFaults);
      if (words.points.size) worth *= (index.points[each.id] ?? []).some((point) => words.points.has(point)) ? HERE : ELSEWHERE;
      if (words.lifts.size && !each.lifts.some((lift) => words.lifts.has(lift))) worth *= OTHER_LIFT;
      return [each, exact(each, folded) ? worth * EXACT : worth];
    });
    const byName = among(holders.drills, askedDrills).map((each) => [each, score(each, askedDrills)]).sort((a, b) => b[1] - a[1] || (a[0].id < b[0].id ? -1 : 1));
    // what the text of the best says counts too, and how rare a word is stays as it was among names
    const scoredDrills = byName.slice(0, READ).filter(([, worth]) => worth).map(([each]) => {
      const worth = score(each, askedDrills, new Set(each.text.split(" ")));
      return [each, exact(each, folded) ? worth * EXACT : worth];
    });
    return { caution: care, faults: best(scoredFaults), drills: best(scoredDrills) };
  };

  // on the page
  const up = document.body.dataset.up, ending = document.body.dataset.static === "yes" ? ".html" : "";
  const listOf = (title, kind, hits) => {
    const heading = document.createElement("h2"), list = document.createElement("ul");
    heading.textContent = title;
    list.className = "links";
    for (const [each] of hits) {
      const item = document.createElement("li"), link = document.createElement("a"), beside = document.createElement("span");
      link.href = `${up}${kind}/${encodeURIComponent(each.id)}${ending}`;
      link.textContent = each.name;
      beside.className = "beside";
      beside.textContent = " " + each.lifts.join(" and ");
      item.append(link, beside);
      list.append(item);
    }
    return [heading, list];
  };
  // how the first fault looks from where a coach stands, and what is mistaken for it
  const isIt = ([[first]]) => {
    const heading = document.createElement("h3"), texts = index.looks[first.id] ?? [];
    heading.textContent = `Is it the first? ${first.name}`;
    return texts.length ? [heading, ...texts.map((text) => Object.assign(document.createElement("p"), { textContent: text }))] : [];
  };
  const count = document.getElementById("count"); // how many there are is said, not each of them
  // that the lifter is free of it and cleared is for whoever asks to say; other words are asked about anew
  const served = document.querySelector("#settled input"), settled = Object.assign(document.createElement("p"), { id: "settled" }), label = document.createElement("label");
  const tick = Object.assign(document.createElement("input"), { type: "checkbox", name: "cleared", value: "yes", checked: Boolean(served?.checked) });
  label.append(tick, ` ${caution.ifCleared}`);
  settled.append(label);
  const show = () => {
    const said = field.value.trim();
    count.textContent = "";
    if (!said) return place.replaceChildren();
    const found = search(said, tick.checked), any = found.faults.length + found.drills.length, cares = [];
    if (found.caution) {
      const care = document.createElement("p"), after = document.createElement("p");
      care.className = "care";
      care.textContent = found.caution;
      after.textContent = caution.after;
      cares.push(care, ...(found.mayClear || tick.checked ? [settled] : []), ...(any ? [after] : []));
      count.textContent = found.caution;
      if (!any) return place.replaceChildren(...cares);
    }
    const parts = [...cares, ...(found.faults.length ? [...listOf("Faults", "fault", found.faults), ...isIt(found.faults)] : []), ...(found.drills.length ? listOf("Drills", "drill", found.drills) : [])];
    if (!parts.length) {
      const none = document.createElement("p");
      none.textContent = "Nothing in the library speaks of that; try what you saw in other words.";
      parts.push(none);
    }
    if (!found.caution) count.textContent = `${found.faults.length} faults and ${found.drills.length} drills found`;
    place.replaceChildren(...parts);
  };
  tick.addEventListener("change", () => { show(); tick.focus(); });
  let waiting = 0;
  field.addEventListener("input", () => { tick.checked = false; clearTimeout(waiting); waiting = setTimeout(show, 120); });
  field.form.addEventListener("submit", (event) => { event.preventDefault(); clearTimeout(waiting); show(); place.querySelector("a")?.focus(); });
  const asked = new URLSearchParams(location.search).get("q");
  if (asked && !field.value) field.value = asked.slice(0, 300);
  if (field.value && (served || !place.querySelector("a, .care"))) show();
  window.drillpathFind = (text, cleared) => {
    const found = search(text, cleared);
    return { caution: found.caution, mayClear: Boolean(found.mayClear), faults: found.faults.map(([each, worth]) => [each.id, worth]), drills: found.drills.map(([each, worth]) => [each.id, worth]) };
  };
})();
