// The list at the side marks the part that the reader is in.
(function () {
  var links = Array.from(document.querySelectorAll(".parts a"));
  var heads = links.map(function (link) {
    return document.getElementById(decodeURIComponent(link.hash.slice(1)));
  });
  if (!links.length || !window.IntersectionObserver) return;
  function mark() {
    var at = heads.findLastIndex(function (head) {
      return head && head.getBoundingClientRect().top < innerHeight / 3;
    });
    links.forEach(function (link, place) {
      if (place === at) link.setAttribute("aria-current", "true");
      else link.removeAttribute("aria-current");
    });
  }
  var seen = new IntersectionObserver(mark, { rootMargin: "0px 0px -66% 0px" });
  heads.filter(Boolean).forEach(function (head) {
    seen.observe(head);
  });
})();
