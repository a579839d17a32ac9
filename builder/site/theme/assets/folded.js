// A link to a working, or to a line inside one, opens it.
(function () {
  function reveal() {
    var name = "";
    try {
      name = decodeURIComponent(location.hash.slice(1));
    } catch (cut) {
      // A link that lost its end on the way leads to the page, and to no line of it.
    }
    var found = name && document.getElementById(name);
    if (!found || !found.closest("details")) return;
    for (var part = found.closest("details"); part; part = part.parentElement.closest("details")) part.open = true;
    found.scrollIntoView();
  }
  addEventListener("hashchange", reveal);
  reveal();
})();
