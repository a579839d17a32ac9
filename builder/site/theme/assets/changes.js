// What changed: mark what is new since this visitor last looked. What they have seen is kept in their browser and sent nowhere; without this
// script, or where the browser keeps nothing, the table stands as written.
(function () {
  var rows = Array.from(document.querySelectorAll('tr[id^="change-"]'));
  if (!rows.length) return;
  var KEY = "what-changed " + location.pathname;
  function rank(id) {
    var parts = /^change-(\d{4}-\d{2}-\d{2})-(\d+)$/.exec(id || "");
    return parts ? parts[1] + "-" + parts[2].padStart(6, "0") : "";
  }
  var newest = rows.reduce(function (best, row) {
    return rank(row.id) > rank(best) ? row.id : best;
  }, "");
  var seen;
  try {
    seen = rank(localStorage.getItem(KEY));
    if (!seen) localStorage.setItem(KEY, newest);
  } catch {
    return;
  }
  var fresh = seen
    ? rows.filter(function (row) {
        return rank(row.id) > seen;
      })
    : [];
  var said = document.createElement("p");
  said.id = "since";
  said.setAttribute("role", "status");
  var frame = rows[0].closest(".table");
  frame.before(said);
  function tell(text) {
    said.replaceChildren(
      document.createTextNode(text + " What you have seen is kept in this browser only."),
    );
  }
  if (!seen) return tell("From your next visit on, this page marks what is new to you.");
  if (!fresh.length) return tell("Nothing is new since you last looked.");
  tell(
    fresh.length +
      (fresh.length === 1 ? " change is" : " changes are") +
      " new since you last looked.",
  );
  fresh.forEach(function (row) {
    var mark = document.createElement("span");
    mark.className = "tag tag-note";
    mark.textContent = "new";
    row.cells[0].append(" ", mark);
  });
  var label = document.createElement("label");
  var only = document.createElement("input");
  only.type = "checkbox";
  only.addEventListener("change", function () {
    rows.forEach(function (row) {
      row.hidden = only.checked && fresh.indexOf(row) < 0;
    });
  });
  // A link to a row leads to it, new or not (reached.js).
  frame.addEventListener("wanted", function () {
    only.checked = false;
    only.dispatchEvent(new Event("change"));
  });
  label.append(only, " Only since I last looked");
  var done = document.createElement("button");
  done.type = "button";
  done.style.cssText = "text-decoration: underline; padding: 0.5em";
  done.textContent = "I have seen these";
  done.addEventListener("click", function () {
    localStorage.setItem(KEY, newest);
    rows.forEach(function (row) {
      row.hidden = false;
      row.querySelectorAll("th .tag-note").forEach(function (mark) {
        mark.remove();
      });
    });
    controls.remove();
    tell("Nothing is new since you last looked.");
  });
  var controls = document.createElement("p");
  controls.append(label, " ", done);
  frame.before(controls);
})();
