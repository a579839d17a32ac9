// How long ago a check was made, counted on the day the page is read. Without this script the date stands alone.
(function () {
  var DAY_MS = 86400000;
  function age(days) {
    var steps = [
      [14, 1, "day"],
      [70, 7, "week"],
      [731, 30, "month"],
      [Infinity, 365, "year"],
    ];
    var step = steps.find(function (each) {
      return days < each[0];
    });
    var count = Math.floor(days / step[1]);
    return count + " " + step[2] + (count === 1 ? "" : "s") + " ago today";
  }
  document.querySelectorAll("article time[datetime]").forEach(function (time) {
    var days = Math.floor((Date.now() - Date.parse(time.dateTime + "T00:00:00Z")) / DAY_MS);
    if (!(days > 0)) return;
    var small = document.createElement("small");
    small.textContent = " (" + age(days) + ")";
    time.append(small);
  });
})();
