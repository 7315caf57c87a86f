// Finds the size for what is typed, by the rule of sewing/size_choice.py and with exact fractions. Keeps and sends nothing.
(function () {
  "use strict";

  var finder = document.getElementById("finder");
  var table = JSON.parse(finder.getAttribute("data-table"));
  var form = finder.querySelector("form");
  var told = finder.querySelector(".sized");
  var fields = Array.from(form.querySelectorAll("input"));
  var units = Array.from(document.querySelectorAll("input[name=units]"));
  var sizes = Array.from(document.querySelectorAll("input[name=size]"));
  // What is told; what stands in braces is filled in.
  var words = JSON.parse(finder.getAttribute("data-words"));
  var SIGNS = {
    "½": "1/2", "⅓": "1/3", "⅔": "2/3", "¼": "1/4", "¾": "3/4", "⅕": "1/5", "⅖": "2/5", "⅗": "3/5", "⅘": "4/5",
    "⅙": "1/6", "⅚": "5/6", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8"
  };
  var UNIT = /\s*(in\.?|inch(?:es)?|"|″|”|''|cm\.?|centimet(?:re|er)s?|mm\.?|millimet(?:re|er)s?)$/i;
  var FRACTION = /^(?:(\d{1,6})(?:[-‐‑]\s?|\s+(?:and\s+)?|\s*\+\s*))?(\d{1,3})\/(\d{1,3})$/;
  // A comma before three digits may part thousands or decimals: nobody can know.
  var DECIMAL = /^(?![1-9]\d{0,2},\d{3}$)(\d{0,6})(?:[.,](\d{1,6}))?$/;
  var EXAMPLE = { "in": "36 1/2", "cm": "92" + words.decimal + "5" };

  // Exact numbers: what stands over the line, and what stands under it.
  function quotient(over, under) { return { over: BigInt(over), under: BigInt(under) }; }
  function exact(text) { var parts = text.split("/"); return quotient(parts[0], parts[1] || 1); }
  function row(text) { return text.split(" ").map(exact); }
  function less(one, other) {
    return quotient(one.over * other.under - other.over * one.under, one.under * other.under);
  }
  function sign(one) { return one.over > 0 ? 1 : one.over < 0 ? -1 : 0; }
  function compare(one, other) { return sign(less(one, other)); }
  function positive(one) { return one.over < 0 ? quotient(-one.over, one.under) : one; }
  // How many whole steps, so many to the unit; halves up.
  function steps(one, each) {
    return (BigInt(2 * each) * one.over + one.under) / (BigInt(2) * one.under);
  }

  // A length above nothing, as a ruler shows it (quantities/ruler.py).
  function show(one, system) {
    var inch = system === "in";
    var each = compare(one, quotient(inch ? 4 : 10, 1)) < 0 ? (inch ? 16 : 10) : (inch ? 8 : 2);
    // Written to the millimetre, or following from what was: the table and what is typed are else on half centimetres.
    if (!inch && one.over * BigInt(2) % one.under) { each = 10; }
    if (!inch && compare(one, quotient(1, 1)) < 0 && one.over * BigInt(20) % one.under === BigInt(0)) { each = 20; }
    var marks = Number(steps(one, each));
    if (inch && marks) {
      var whole = Math.floor(marks / each), part = marks % each;
      while (part && part % 2 === 0) { part /= 2; each /= 2; }
      return (whole && part ? whole + " " : whole || "") + (part ? part + "/" + each : "") + " in";
    }
    if (!inch && marks >= each) { return String(marks / each).replace(".", words.decimal) + " cm"; }
    if (!inch && marks) { return String(marks * 10 / each).replace(".", words.decimal) + " mm"; }
    var scale = inch ? 1 : 10, places = 100;
    while (!steps(one, scale * places)) { places *= 10; }
    return String(Number(steps(one, scale * places)) / places).replace(".", words.decimal) + (inch ? " in" : " mm");
  }

  function fill(name, values) {
    return words[name].replace(/\{(\w+)\}/g, function (all, key) { return values[key]; });
  }
  function unit() {
    var one = units.find(function (input) { return input.checked; });
    return (one && one.value) || table.first;
  }

  // What was typed: a length with its system, or the name of what is wrong with it.
  function read(text, bare) {
    var end = UNIT.exec(text), system = bare, small = false;
    if (end) {
      small = /^m/i.test(end[1]);
      system = /^[cm]/i.test(end[1]) ? "cm" : "in";
      text = text.slice(0, end.index);
    }
    text = text.replace(/⁄/g, "/").replace(/[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]/g, function (found, at) {
      return (/\d$/.test(text.slice(0, at)) ? " " : "") + SIGNS[found];
    });
    var found = FRACTION.exec(text), value;
    if (found) {
      var top = Number(found[2]), bottom = Number(found[3]);
      if (!bottom || (found[1] && top >= bottom)) { return { wrong: "no_length" }; }
      if (system === "in" && [2, 4, 8, 16, 32, 64].indexOf(bottom) < 0) { return { wrong: "no_mark" }; }
      value = quotient(Number(found[1] || 0) * bottom + top, bottom);
    } else {
      found = DECIMAL.exec(text);
      if (!found || !(found[1] || found[2])) { return { wrong: "no_length" }; }
      value = quotient(found[1] + (found[2] || ""), "1" + "0".repeat((found[2] || "").length));
    }
    if (!sign(value)) { return { wrong: "zero" }; }
    return { system: system, value: small ? quotient(value.over, value.under * BigInt(10)) : value };
  }

  // Where a measurement lies, and the size that it asks for.
  function choose(line, you) {
    var body = row(line.body[you.system]), last = body.length - 1, person = you.value;
    var tolerance = exact(table.tolerance[you.system]);
    var found = { line: line, you: you, body: body, fit: "in", at: last };
    if (compare(less(body[0], person), tolerance) > 0) {
      found.fit = "below";
      found.at = 0;
    } else if (compare(person, body[last]) > 0) {
      found.fit = compare(less(person, body[last]), tolerance) > 0 ? "above" : "last";
    } else {
      found.at = body.findIndex(function (each) { return compare(person, each) <= 0; });
      if (found.at && compare(less(person, body[found.at - 1]), tolerance) <= 0) { between(found); }
    }
    return found;
  }
  function between(found) {
    var larger = found.at, ease = roomOf(found, larger - 1);
    var least = found.line.least && exact(found.line.least[found.you.system]);
    found.fit = "between";
    found.larger = larger;
    found.why = table.stretches ? "stretches" : ease && least && compare(ease, least) >= 0 ? "room" : "take_in";
    found.ease = ease;
    found.least = least;
    if (found.why !== "take_in") { found.at = larger - 1; }
  }
  function roomOf(found, size) {
    var garment = found.line.garment && row(found.line.garment[found.you.system]);
    return garment && less(garment[size], found.you.value);
  }
  // Above every size before the largest, in a size before below all; else the first in the table.
  function decides(one, other) {
    if (one.at !== other.at) { return one.at > other.at; }
    if ((one.fit === "above") !== (other.fit === "above")) { return one.fit === "above"; }
    return one.fit !== "below" && other.fit === "below";
  }

  // The sum behind one measurement, in words.
  function sentence(found, names) {
    var system = found.you.system, body = found.body, at = found.at;
    function shown(value) { return show(value, system); }
    function over(size) { return shown(less(found.you.value, body[size])); }
    var base = { measure: table.measures[found.line.measure], you: found.you.text, size: names[at], body: shown(body[at]) };
    if (found.fit === "below") {
      return fill("below", Object.assign(base, { under: shown(less(body[0], found.you.value)) }));
    }
    if (found.fit === "above" || found.fit === "last") {
      return fill(found.fit, Object.assign(base, { over: over(at) }));
    }
    var larger = found.fit === "between" ? found.larger : at;
    if (larger) { Object.assign(base, { smaller: names[larger - 1], smaller_body: shown(body[larger - 1]) }); }
    if (found.fit !== "between") { return fill(larger ? "within" : "first", base); }
    Object.assign(base, { larger: names[larger], larger_body: shown(body[larger]), over: over(larger - 1) });
    if (found.why === "room") { Object.assign(base, { ease: shown(found.ease), least: shown(found.least) }); }
    return fill("between", base) + " " + fill(found.why, base);
  }
  function garment(found, at, names) {
    var ease = roomOf(found, at), system = found.you.system;
    if (!ease) { return ""; }
    return " " + fill(["less", "same", "more"][sign(ease) + 1], {
      size: names[at], ease: sign(ease) ? show(positive(ease), system) : "",
      garment: show(row(found.line.garment[system])[at], system)
    });
  }
  function outside(found) { return found.fit === "above" || found.fit === "below"; }
  // Where the same number would lie in the table in the other unit, that may be meant.
  function unitHint(found) {
    var other = found.you.system === "in" ? "cm" : "in";
    if (!found.you.bare || outside(choose(found.line, { system: other, value: found.you.value }))) { return ""; }
    return " " + fill("other_unit", { unit: words[other], example: found.you.typed + " " + other });
  }

  // A length stays on one line with its fraction and its unit.
  function put(parent, name, text, kind) {
    var made = document.createElement(name);
    made.textContent = text.replace(/(\d) (?=\d+\/|(?:in|cm|mm)\b)/g, "$1\u00a0");
    if (kind) { made.className = kind; }
    return parent.appendChild(made);
  }

  function tell(run, persons) {
    var lines = run.rows.filter(function (line) { return persons[line.measure]; });
    if (!lines.length) { return; }
    var found = lines.map(function (line) { return choose(line, persons[line.measure]); });
    var first = found.reduce(function (best, one) { return decides(one, best) ? one : best; });
    var names = run.sizes, size = names[first.at], none = outside(first);
    var values = { size: size, first: names[0], last: names[names.length - 1], measure: table.measures[first.line.measure] };
    var part = put(told, "div", "");
    put(part, "p", fill((table.runs.length > 1 ? "run" : "size") + (none ? "_none" : ""), values), "answer");
    var alike = found.every(function (one) { return one.at === first.at && !outside(one); });
    put(part, "p", fill(
      none ? first.fit + "_all" : found.length === 1 ? "only" : alike ? "every" : "decides", values
    ));
    var list = put(part, "ul", "");
    found.forEach(function (one) {
      put(list, "li", sentence(one, names) + (outside(one) ? unitHint(one) : none ? "" : garment(one, first.at, names)));
    });
    var radio = sizes.find(function (input) { return input.value === size; });
    if (radio && !none) { offer(part, radio, size); }
  }
  function offer(part, radio, size) {
    var button = put(part, "button", "");
    button.type = "button";
    function say() { button.textContent = fill(radio.checked ? "chosen" : "choose", { size: size }); }
    button.addEventListener("click", function () {
      radio.checked = true;
      radio.dispatchEvent(new Event("change", { bubbles: true }));
    });
    sizes.forEach(function (each) { each.addEventListener("change", say); });
    say();
  }

  function mark(field, text) {
    field.setAttribute("aria-invalid", text ? "true" : "false");
    document.getElementById(field.id + "-wrong").textContent = text;
  }
  function find(event) {
    var persons = {}, wrong = [], bare = unit();
    event.preventDefault();
    told.textContent = "";
    fields.forEach(function (field, at) {
      var text = field.value.trim(), you = text && read(text, bare);
      mark(field, you && you.wrong ? fill(you.wrong, { text: text, example: EXAMPLE[bare] }) : "");
      if (you && you.wrong) { wrong.push(field); }
      if (!you || you.wrong) { return; }
      you.bare = !UNIT.test(text);
      you.typed = text;
      you.text = you.bare ? text + " " + bare : text;
      persons[at] = you;
    });
    if (wrong.length) { wrong[0].focus(); return; }
    if (!Object.keys(persons).length) { put(told, "p", words.nothing); fields[0].focus(); return; }
    table.runs.forEach(function (run) { tell(run, persons); });
  }

  // What was typed before another unit is chosen keeps the unit in which it was typed.
  var now = unit();
  function label() {
    var next = unit();
    fields.forEach(function (field) {
      var text = field.value.trim();
      if (next !== now && text && !UNIT.test(text) && !read(text, now).wrong) { field.value = text + " " + now; }
      field.inputMode = next === "cm" ? "decimal" : "text";
      document.getElementById(field.id + "-unit").textContent = next;
    });
    now = next;
  }

  form.hidden = false;
  label();
  units.forEach(function (input) { input.addEventListener("change", label); });
  form.addEventListener("submit", find);
  form.addEventListener("input", function (event) {
    told.textContent = "";
    mark(event.target, "");
  });
})();
