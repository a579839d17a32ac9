// How old a check is today. The page itself says the age on the day of the revision.
(function () {
  document.querySelectorAll("[data-verified]").forEach(function (element) {
    var days = Math.floor((Date.now() - Date.parse(element.dataset.verified)) / 86400000);
    if (days >= 0) element.textContent = days === 0 ? "today" : days === 1 ? "1 day ago" : days + " days ago";
  });
})();
