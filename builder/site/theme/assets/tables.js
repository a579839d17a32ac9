// Tables: sort by a header, show only some rows of a long one, and keep the header in sight where the table fits the page. Without this script the tables stand as written.
(function () {
  function value(row, column) {
    var cell = row.cells[column];
    var order = cell.dataset.order;
    return order === undefined ? cell.textContent.trim() : Number(order);
  }
  // Numbers come before words whichever way they run, so that what nobody has stated stays at the end.
  function compare(a, b, way) {
    if (typeof a !== typeof b) return typeof a === "number" ? -1 : 1;
    var found =
      typeof a === "number"
        ? a - b
        : a.localeCompare(b, "en", { numeric: true, sensitivity: "base" });
    return way === "descending" ? -found : found;
  }
  function sort(table, column, way) {
    var body = table.tBodies[0];
    var rows = Array.from(body.rows);
    rows.forEach(function (row, place) {
      if (row.dataset.place === undefined) row.dataset.place = place;
    });
    rows.sort(function (a, b) {
      var found = way === "none" ? 0 : compare(value(a, column), value(b, column), way);
      return found || a.dataset.place - b.dataset.place;
    });
    body.append.apply(body, rows);
  }
  var NEXT = { none: "ascending", ascending: "descending", descending: "none" };
  function press(table, head) {
    var way = NEXT[head.getAttribute("aria-sort") || "none"];
    Array.from(table.tHead.rows[0].cells).forEach(function (other) {
      other.removeAttribute("aria-sort");
    });
    if (way !== "none") head.setAttribute("aria-sort", way);
    sort(table, head.cellIndex, way);
  }
  document.querySelectorAll("table[data-sortable]").forEach(function (table) {
    Array.from(table.tHead.rows[0].cells).forEach(function (head) {
      var button = document.createElement("button");
      button.type = "button";
      button.append.apply(button, Array.from(head.childNodes));
      button.addEventListener("click", function () {
        press(table, head);
      });
      head.append(button);
    });
  });
  var frames = document.querySelectorAll(".table");
  // A row stays while it holds every word; blanks and hyphens do not count, so that r43 finds R4-3.
  function bare(text) {
    return text.toLowerCase().replace(/[\s\u00a0-]+/g, "");
  }
  function only(frame, rows, words) {
    var wanted = words.split(/\s+/).map(bare);
    rows.forEach(function (row) {
      var said = bare(row.textContent);
      row.hidden = !wanted.every(function (word) {
        return said.indexOf(word) >= 0;
      });
    });
    frame.scrollTop = 0;
  }
  frames.forEach(function (frame) {
    var rows = Array.from(frame.querySelectorAll("tbody tr"));
    if (rows.length < 15 || rows[0].id.indexOf("change-") === 0) return;
    var label = document.createElement("label");
    var field = document.createElement("input");
    label.className = "filter";
    field.type = "text";
    field.setAttribute("aria-label", "Only rows with");
    field.autocomplete = "off";
    field.spellcheck = false;
    field.setAttribute("autocapitalize", "off");
    field.addEventListener("input", function () {
      only(frame, rows, field.value);
    });
    // On paper all rows stand; and whoever follows a link to a row must find it (reached.js).
    function all() {
      field.value = "";
      only(frame, rows, "");
    }
    addEventListener("beforeprint", all);
    frame.addEventListener("wanted", all);
    label.append("Only rows with", field);
    frame.before(label);
  });
  // What scrolls can be reached and moved by the keyboard.
  function reachable(part) {
    if (part.scrollWidth > part.clientWidth + 1) part.tabIndex = 0;
    else part.removeAttribute("tabindex");
  }
  // All are measured before any is changed, so that the page is laid out once and not for each.
  function measured(what) {
    return Array.from(frames).map(what);
  }
  function fit() {
    document.querySelectorAll(".drawing, pre").forEach(reachable);
    frames.forEach(function (frame) {
      frame.classList.remove("fits", "wide");
    });
    measured(function (frame) {
      return frame.scrollWidth <= frame.clientWidth;
    }).forEach(function (fits, place) {
      frames[place].classList.add(fits ? "fits" : "wide");
      if (fits) frames[place].removeAttribute("tabindex");
      else frames[place].tabIndex = 0;
    });
    measured(function (frame) {
      return Math.ceil(frame.querySelector("thead").getBoundingClientRect().height);
    }).forEach(function (height_px, place) {
      frames[place].style.setProperty("--head", height_px + "px");
    });
  }
  fit();
  addEventListener("resize", fit);
})();
