// What a link leads to stands in sight: what is folded over it opens, a filter that hides it ends, and a table that scrolls by itself brings it under
// its head. The rest is in the style sheet, so without this script too a row stands under its head, unless it is folded away.
(function () {
  function wanted() {
    try {
      return document.getElementById(decodeURIComponent(location.hash.slice(1)));
    } catch {
      // A link that lost its end on the way leads to the page, and to no line of it.
      return null;
    }
  }
  function unfold(found) {
    var folds = [];
    for (
      let part = found.closest("details:not([open])");
      part;
      part = part.parentElement.closest("details:not([open])")
    )
      folds.push(part);
    folds.forEach(function (each) {
      each.open = true;
    });
    return folds.length > 0;
  }
  function unfilter(row) {
    if (!row || !row.hidden) return false;
    row.dispatchEvent(new Event("wanted", { bubbles: true }));
    return true;
  }
  // How far below the edge of its frame the row comes to stand is told to the style sheet, so that the browser leads to the same place whenever it
  // goes there by itself: while the page is loading, and when a link is pressed again.
  function under(row) {
    var frame = row?.closest(".table.wide");
    if (!frame) return;
    function depth_px() {
      return row.getBoundingClientRect().top - frame.getBoundingClientRect().top;
    }
    frame.scrollTop += depth_px() - parseFloat(frame.style.getPropertyValue("--head"));
    row.style.setProperty("--under", depth_px() + "px");
  }
  function inSight(found) {
    var box = found.getBoundingClientRect();
    return box.bottom > 0 && box.top < innerHeight;
  }
  // Whoever comes back finds the page where it was left, and the row in its frame; everybody else is led to the row.
  function lead(arriving) {
    var found = wanted();
    if (!found) return;
    var row = found.closest("tbody tr");
    var hidden = [unfold(found), unfilter(row)].some(Boolean);
    under(row);
    if (hidden || arriving || inSight(found)) found.scrollIntoView();
  }
  addEventListener("hashchange", function () {
    lead(false);
  });
  // A link to where one is already makes no change of address.
  document.addEventListener("click", function (event) {
    var link = event.target.closest("a[href]");
    if (link && new URL(link.getAttribute("href"), location).href === location.href)
      setTimeout(function () {
        lead(true);
      });
  });
  var arrival = performance.getEntriesByType("navigation")[0];
  lead(!arrival || arrival.type === "navigate");
})();
