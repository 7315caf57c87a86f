// Searches the data that stand in search-data.js. Without it the page is a list of everything.
(function () {
  "use strict";

  var MOST = 40;
  var AROUND = 90;
  var form = document.querySelector("form.search");
  var field = document.getElementById("q");
  var said = document.querySelector(".found");
  var list = document.getElementById("results");
  var everything = document.getElementById("everything");
  var data = window.searchData;
  if (!form || !data) { return; }
  var words = JSON.parse(form.getAttribute("data-words"));

  // A word without accents, capitals and the s of its plural.
  function plain(word) {
    var bare = word.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase().replace(/ß/g, "ss");
    if (bare.length > 4 && /ies$/.test(bare)) { return bare.slice(0, -3) + "y"; }
    if (bare.length > 4 && /(?:ss|sh|ch|x|zz)es$/.test(bare)) { return bare.slice(0, -2); }
    if (bare.length > 3 && /[^siu]s$/.test(bare)) { return bare.slice(0, -1); }
    return bare;
  }

  function wordsOf(text) {
    return Array.from(text.matchAll(/[\p{L}\p{N}\p{M}]+(?:\/\p{N}+)?/gu), function (found) {
      return { word: plain(found[0]), start: found.index, end: found.index + found[0].length };
    });
  }

  var entries = data.entries.map(function (entry) {
    var page = data.pages[entry[3]];
    // A length stays on one line with its fraction and its unit.
    var text = entry[4].replace(/(\d) (?=\d+\/|(?:in|cm|mm|yd|m)\b)/g, "$1\u00a0");
    return {
      kind: data.kinds[entry[0]], title: entry[1], href: (page ? page[1] : "") + entry[2], under: page ? page[0] : "",
      text: text, weight: data.weights[entry[0]], inTitle: wordsOf(entry[1]), inText: wordsOf(text)
    };
  });

  // Which of the words of a text begin like a word that is asked for.
  function hits(words, asked) {
    return words.filter(function (each) { return each.word.startsWith(asked); });
  }

  // A hit in a title counts by what it is the title of, one in the text least; a whole word more than its beginning,
  // and a little more in a title that says nothing else.
  function score(entry, asked) {
    function best(words) {
      return words.reduce(function (most, each) { return Math.max(most, each.word === asked ? 1 : 0.65); }, 0);
    }
    var alone = 0.8 + 0.2 / Math.max(1, entry.inTitle.length);
    return best(hits(entry.inTitle, asked)) * entry.weight * alone + best(hits(entry.inText, asked));
  }

  function search(asked) {
    var found = entries.map(function (entry, place) {
      var each = asked.map(function (word) { return score(entry, word); });
      return {
        entry: entry, place: place, missed: each.filter(function (one) { return one === 0; }).length,
        score: each.reduce(function (sum, one) { return sum + one; }, 0)
      };
    }).filter(function (one) { return one.score > 0; });
    var whole = found.filter(function (one) { return one.missed === 0; });
    return {
      partly: whole.length === 0 && found.length > 0,
      found: (whole.length ? whole : found).sort(function (a, b) {
        return a.missed - b.missed || b.score - a.score || a.place - b.place;
      })
    };
  }

  // The text between two places, its hits marked.
  function marked(text, words, asked, from, to) {
    var part = document.createDocumentFragment();
    var done = from;
    words.forEach(function (each) {
      if (each.start < done || each.end > to || !asked.some(function (word) { return each.word.startsWith(word); })) { return; }
      part.append(text.slice(done, each.start));
      var mark = document.createElement("mark");
      mark.textContent = text.slice(each.start, each.end);
      part.append(mark);
      done = each.end;
    });
    part.append(text.slice(done, to));
    return part;
  }

  function snippet(entry, asked) {
    var first = entry.inText.find(function (each) { return asked.some(function (word) { return each.word.startsWith(word); }); });
    var middle = first ? first.start : 0;
    var from = middle > AROUND ? entry.text.indexOf(" ", middle - AROUND) + 1 : 0;
    var to = entry.text.length > from + 2 * AROUND ? entry.text.lastIndexOf(" ", from + 2 * AROUND) : entry.text.length;
    if (to <= middle) { to = entry.text.length; }
    var part = document.createElement("p");
    if (from > 0) { part.append("… "); }
    part.append(marked(entry.text, entry.inText, asked, from, to));
    if (to < entry.text.length) { part.append(" …"); }
    return part;
  }

  function shown(entry, asked) {
    var item = document.createElement("li");
    var link = document.createElement("a");
    link.href = entry.href;
    link.append(marked(entry.title, entry.inTitle, asked, 0, entry.title.length));
    var kind = document.createElement("span");
    kind.textContent = entry.kind + (entry.under && entry.under !== entry.title ? ", " + entry.under : "");
    item.append(link, " ", kind);
    if (entry.text) { item.append(snippet(entry, asked)); }
    return item;
  }

  function inWords(result, query) {
    var count = result.found.length;
    if (!count) { return fill("nothing", { query: query }); }
    return (result.partly ? words.partly + " " : "") + fill(count === 1 ? "found_one" : "found", { count: count, query: query }) +
      (count > MOST ? fill("first", { most: MOST }) : "");
  }

  function fill(name, values) {
    return words[name].replace(/\{(\w+)\}/g, function (all, key) { return values[key]; });
  }

  function run() {
    var query = field.value.trim();
    var asked = wordsOf(query).map(function (each) { return each.word; });
    var result = asked.length ? search(asked) : { found: [] };
    list.replaceChildren.apply(list, result.found.slice(0, MOST).map(function (one) { return shown(one.entry, asked); }));
    list.hidden = !result.found.length;
    everything.hidden = !!result.found.length;
    said.textContent = asked.length ? inWords(result, query) : "";
    var address = location.pathname + (query ? "?q=" + encodeURIComponent(query) : "");
    try { history.replaceState(null, "", address + location.hash); } catch (refused) { /* as it was */ }
  }

  // Down and up go from the field through the results and back.
  function walk(event) {
    var way = { ArrowDown: 1, ArrowUp: -1 }[event.key];
    var stops = [field].concat(Array.from(list.querySelectorAll("a")));
    var here = stops.indexOf(document.activeElement);
    if (!way || here < 0 || !stops[here + way] || event.altKey || event.ctrlKey || event.metaKey) { return; }
    event.preventDefault();
    stops[here + way].focus();
  }

  var waiting;
  form.hidden = false;
  field.value = new URLSearchParams(location.search).get("q") || "";
  field.addEventListener("input", function () {
    clearTimeout(waiting);
    waiting = setTimeout(run, 120);
  });
  form.addEventListener("submit", function (event) {
    event.preventDefault();
    clearTimeout(waiting);
    run();
  });
  document.addEventListener("keydown", walk);
  run();
  if (!location.hash) { field.focus(); }
})();
