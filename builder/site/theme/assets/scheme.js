// Light or dark. Without a choice the page follows the device.
(function () {
  var root = document.documentElement;
  var button = document.querySelector(".scheme");
  var dark = matchMedia("(prefers-color-scheme: dark)");
  if (!button) return;
  function isDark() {
    return root.dataset.scheme ? root.dataset.scheme === "dark" : dark.matches;
  }
  function say() {
    button.title = isDark() ? "Show the page light" : "Show the page dark";
    button.setAttribute("aria-label", button.title);
  }
  button.addEventListener("click", function () {
    root.dataset.scheme = isDark() ? "light" : "dark";
    __md_set("scheme", root.dataset.scheme);
    say();
  });
  dark.addEventListener("change", say);
  button.hidden = false;
  say();
})();
