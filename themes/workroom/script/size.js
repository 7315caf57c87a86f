// Shows the finder of sizes, and fetches what it does when it is first opened.
(function () {
  "use strict";
  var finder = document.getElementById("finder");
  var own = document.currentScript;
  if (!finder || !own || !window.BigInt) { return; }
  finder.hidden = false;
  finder.addEventListener("toggle", function () {
    var script = document.createElement("script");
    script.src = new URL("find-size.js", own.src).href;
    script.addEventListener("error", function () {
      finder.querySelector(".sized").textContent = JSON.parse(finder.getAttribute("data-words")).no_network;
    });
    document.head.appendChild(script);
  }, { once: true });
})();
