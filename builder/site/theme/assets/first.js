// Runs before the page is drawn: the reader's choice of light or dark, and where the site begins.
var __md_scope = new URL(document.currentScript.dataset.base, location);
var __md_get = function (key, store, scope) {
  try {
    return JSON.parse((store || localStorage).getItem((scope || __md_scope).pathname + "." + key));
  } catch {
    return null;
  }
};
var __md_set = function (key, value, store, scope) {
  try {
    (store || localStorage).setItem(
      (scope || __md_scope).pathname + "." + key,
      JSON.stringify(value),
    );
  } catch {
    // A browser may keep nothing; then the choice lasts as long as the page.
  }
};
(function () {
  document.documentElement.classList.remove("no-js");
  var chosen = __md_get("scheme");
  if (chosen === "light" || chosen === "dark") document.documentElement.dataset.scheme = chosen;
})();
