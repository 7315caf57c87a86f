// Remembers size, units and finished steps, and opens a working that is linked to. The page works without it.
(function () {
  "use strict";

  var page = "workroom " + location.pathname + " ";
  var everywhere = "workroom units";

  // A browser may refuse to store anything; then nothing is remembered.
  function recall(key) {
    try { return localStorage.getItem(key); } catch (refused) { return null; }
  }
  function remember(key, value) {
    try {
      if (value) { localStorage.setItem(key, value); } else { localStorage.removeItem(key); }
    } catch (refused) { /* not remembered */ }
  }

  function keepChoice(name, key) {
    var before = recall(key);
    document.querySelectorAll('input[name="' + name + '"]').forEach(function (input) {
      if (before !== null && input.value === before) { input.checked = true; }
      input.addEventListener("change", function () { remember(key, input.value); });
    });
  }
  keepChoice("size", page + "size");
  keepChoice("units", everywhere);

  document.querySelectorAll("input[data-card]").forEach(function (box) {
    var card = box.getAttribute("data-card");
    var entry = document.querySelector('[data-to="' + CSS.escape(card) + '"]');
    function show() {
      if (entry) { entry.classList.toggle("is-done", box.checked); }
    }
    box.checked = recall(page + card) === "done";
    show();
    box.addEventListener("change", function () {
      remember(page + card, box.checked ? "done" : "");
      show();
    });
  });

  function openTarget() {
    var target = document.getElementById(decodeURIComponent(location.hash.slice(1)));
    var folded = target && target.closest("details");
    if (folded && !folded.open) {
      folded.open = true;
      target.scrollIntoView();
    }
  }
  window.addEventListener("hashchange", openTarget);
  openTarget();

  // Pictures further down wait for those in sight; then they come too, for paper shows them all.
  window.addEventListener("load", function () {
    document.querySelectorAll("img[loading]").forEach(function (picture) { picture.loading = "eager"; });
  });
})();
