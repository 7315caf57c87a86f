// Where pages come from a server, what was opened is kept, and the site may go on the home screen of a phone.
(function () {
  "use strict";

  var here = document.currentScript && document.currentScript.src;
  if (!here || !/^https?:$/.test(location.protocol)) { return; }
  var home = new URL("../", here);

  var manifest = document.createElement("link");
  manifest.rel = "manifest";
  manifest.href = new URL("site.webmanifest", home).href;
  document.head.append(manifest);

  if (!("serviceWorker" in navigator)) { return; }
  window.addEventListener("load", function () {
    navigator.serviceWorker.register(new URL("service-worker.js", home), { scope: home.pathname }).then(function () {
      return navigator.serviceWorker.ready;
    }).then(function (kept) {
      var loaded = performance.getEntriesByType("resource").map(function (each) { return each.name; });
      kept.active.postMessage([location.href].concat(loaded));
    }, function () { /* not kept: a browser may refuse */ });
  });
})();
