// On paper nothing can be opened, so everything is open; afterwards the page is as it was.
(function () {
  var opened = [];
  addEventListener("beforeprint", function () {
    opened = Array.from(document.querySelectorAll("details:not([open])"));
    opened.forEach(function (part) {
      part.open = true;
    });
  });
  addEventListener("afterprint", function () {
    opened.forEach(function (part) {
      part.open = false;
    });
  });
})();
