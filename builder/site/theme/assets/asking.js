// The search listens to keys; words that come by voice, by pasting or by wiping over the keys count too.
(function () {
  var field = document.querySelector(".search-input");
  if (!field) return;
  field.addEventListener("input", function () {
    field.dispatchEvent(new KeyboardEvent("keyup", { bubbles: true }));
  });
})();
