// The list of parts closes when one was chosen, or when the reader turns to the page again.
(function () {
  var jump = document.querySelector(".jump");
  if (!jump) return;
  jump.addEventListener("click", function (event) {
    if (event.target.closest("a")) jump.open = false;
  });
  addEventListener("hashchange", function () {
    jump.open = false;
  });
  document.addEventListener("click", function (event) {
    if (!jump.contains(event.target)) jump.open = false;
  });
  jump.addEventListener("keydown", function (event) {
    if (event.key !== "Escape" || !jump.open) return;
    jump.open = false;
    jump.querySelector("summary").focus();
  });
})();
