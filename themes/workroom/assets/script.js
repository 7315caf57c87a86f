// Remembers what was chosen and which steps are done, carries a choice in the address, turns steps by the arrow keys and
// opens a working that is linked to. The page works without it.
(function () {
  "use strict";

  var choose = document.getElementById("choose");
  // All views of a tutorial have one home, so a size holds for all of them.
  var home = new URL((choose && choose.getAttribute("data-home")) || ".", location.href).pathname;
  var page = "workroom " + location.pathname + " ";
  var address = new URLSearchParams(location.search);

  // A browser may refuse to store anything; then nothing is remembered.
  function recall(key) {
    try { return localStorage.getItem(key); } catch (refused) { return null; }
  }
  function remember(key, value) {
    try {
      if (value) { localStorage.setItem(key, value); } else { localStorage.removeItem(key); }
    } catch (refused) { /* not remembered */ }
  }
  function inputs(name) {
    return Array.from(document.querySelectorAll('input[name="' + name + '"]'));
  }

  // What stands in the address goes before what was remembered; what the page does not offer is passed over.
  function takeUp(name, key) {
    var offered = inputs(name);
    [address.get(name), recall(key)].some(function (value) {
      var one = value && offered.find(function (input) { return input.value === value; });
      if (one) { one.checked = true; }
      return one;
    });
    offered.forEach(function (input) {
      input.addEventListener("change", function () {
        remember(key, input.value);
        carry();
        loadShown();
      });
    });
  }

  // The choice stands in the address, and goes along to the other views.
  function carry() {
    ["size", "units", "names"].forEach(function (name) {
      var one = inputs(name).find(function (input) { return input.checked; });
      if (one) {
        if (one.value) { address.set(name, one.value); } else { address.delete(name); }
      }
    });
    var search = address.toString() ? "?" + address : "";
    if (search !== location.search) {
      try { history.replaceState(null, "", location.pathname + search + location.hash); } catch (refused) { /* as it was */ }
    }
    document.querySelectorAll("a.choice").forEach(function (link) { link.search = search; });
  }

  // A drawing that waits to be seen comes now, for paper may show it sooner. Those of other sizes go on waiting.
  function loadShown() {
    if (document.readyState !== "complete") { return; }
    document.querySelectorAll("img[loading=lazy]").forEach(function (picture) {
      if (getComputedStyle(picture).display !== "none") { picture.loading = "eager"; }
    });
  }

  function offerLink() {
    if (!inputs("size").length || !navigator.clipboard || !choose.getAttribute("data-words")) { return; }
    var button = document.createElement("button");
    var words = JSON.parse(choose.getAttribute("data-words") || "{}");
    var said = words.copy;
    button.type = "button";
    button.className = "share";
    button.textContent = said;
    button.setAttribute("aria-live", "polite");
    button.addEventListener("click", function () {
      var link = location.href.split("#")[0];
      navigator.clipboard.writeText(link).then(
        function () { button.textContent = words.copied; },
        function () { button.textContent = words.not_copied; }
      );
      setTimeout(function () { button.textContent = said; }, 4000);
    });
    choose.appendChild(button);
  }

  function keepTicks(box) {
    var card = box.closest(".card").id;
    var entry = document.querySelector('.steps a[href="#' + CSS.escape(card) + '"]');
    function show() {
      if (entry) { entry.parentElement.classList.toggle("is-done", box.checked); }
    }
    box.checked = recall(page + card) === "done";
    show();
    box.addEventListener("change", function () {
      remember(page + card, box.checked ? "done" : "");
      show();
    });
  }

  // The last step that was led to stays the one shown, also while a table further up is looked at.
  function setNow(card) {
    document.querySelectorAll(".card.now").forEach(function (other) { other.classList.remove("now"); });
    if (card) { card.classList.add("now"); }
  }

  function follow() {
    var target = document.getElementById(decodeURIComponent(location.hash.slice(1)));
    var folded = target && target.closest("details");
    var card = target && target.closest(".card");
    if (card) {
      setNow(card);
      remember(page + "now", card.id);
    }
    if (folded && !folded.open) { folded.open = true; }
    if (folded) { target.scrollIntoView(); }
  }

  function turn(event) {
    var way = { ArrowLeft: ".back", ArrowRight: ".onward" }[event.key];
    var one = document.getElementById("steps-one");
    var within = event.target.closest && event.target.closest("input, textarea, select, [contenteditable], [tabindex], [popover]");
    if (!way || !one || !one.checked || within || event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) { return; }
    var card = document.querySelector(".card.now") || document.querySelector(".card");
    var link = card && card.querySelector(".turn " + way);
    if (link) {
      event.preventDefault();
      location.hash = link.hash;
    }
  }

  // Who chose one step at a time with a pointer may turn the steps by the arrow keys at once; who chose it with these
  // keys stays in the choice.
  function freeArrows(one) {
    one.addEventListener("click", function (event) {
      if (event.detail) { one.blur(); }
    });
  }

  takeUp("size", "workroom " + home + " size");
  takeUp("units", "workroom units");
  takeUp("names", "workroom names");
  takeUp("steps", "workroom steps");
  inputs("steps").forEach(freeArrows);
  if (choose) { carry(); offerLink(); }
  document.querySelectorAll(".done input").forEach(keepTicks);
  setNow(document.getElementById(recall(page + "now") || "step-1"));
  follow();
  window.addEventListener("hashchange", follow);
  window.addEventListener("load", loadShown);
  document.addEventListener("keydown", turn);
})();
