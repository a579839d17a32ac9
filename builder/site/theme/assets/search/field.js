// The search field. What it searches is fetched when someone first asks, so that a page costs nothing for a search that nobody makes.
(function () {
  var box = document.querySelector(".search");
  if (!box) return;
  var field = box.querySelector(".search-input");
  var told = box.querySelector(".search-told");
  var list = box.querySelector(".answers");
  var base = __md_scope;
  var PARTS = ["words", "ranking", "entries"];
  var MOST = 30;
  var asking = null;

  function fetched(part) {
    return new Promise(function (done, failed) {
      var script = document.createElement("script");
      script.src = new URL("assets/search/" + part + ".js", base);
      script.async = false;
      script.onload = done;
      script.onerror = failed;
      document.head.append(script);
    });
  }
  function begin() {
    if (asking) return asking;
    told.textContent = "Fetching the words of this pack";
    asking = Promise.all(PARTS.map(fetched)).then(function () {
      window.housesearch.ready();
    });
    asking.catch(function () {
      asking = null;
      told.textContent =
        "The words of this pack could not be fetched. Try again when the signal is back; the contents work without them.";
    });
    return asking;
  }
  function open(yes) {
    var was = box.hasAttribute("data-open");
    box.toggleAttribute("data-open", yes);
    if (was !== yes) document.documentElement.classList.toggle("searching", yes);
  }

  // A long text is told from the column in which the first word was found.
  function cut(text, terms) {
    if (text.length < 170) return text;
    var hit = window.housesearch.wordsOf(text).find(function (word) {
      return held(word, terms);
    });
    var from =
      hit && hit.from > 120
        ? Math.max(
            text.lastIndexOf("; ", hit.from),
            text.lastIndexOf(". ", hit.from),
            hit.from - 60,
          )
        : -1;
    var begun = from > 0 ? "… " + text.slice(text.indexOf(" ", from) + 1) : text;
    return begun.length > 190 ? begun.slice(0, begun.lastIndexOf(" ", 180)) + " …" : begun;
  }
  // A heading says what stands under it.
  function below(line) {
    return window.housesearch.lines
      .filter(function (other) {
        return other[0] === line[0] && other[3] === line[2] && !other[5];
      })
      .slice(0, 4)
      .map(function (other) {
        return other[2] + " – " + other[4].split("; ")[0];
      })
      .join("; ");
  }
  function held(word, terms) {
    return (
      terms.has(word.term) ||
      word.parts.some(function (part) {
        return terms.has(part);
      })
    );
  }
  function marked(kind, text, terms) {
    var line = document.createElement("span");
    line.className = kind;
    line.dir = "auto";
    var at = 0;
    window.housesearch
      .wordsOf(text)
      .filter(function (word) {
        return held(word, terms);
      })
      .forEach(function (word) {
        var mark = document.createElement("mark");
        mark.textContent = text.slice(word.from, word.to);
        line.append(text.slice(at, word.from), mark);
        at = word.to;
      });
    line.append(text.slice(at));
    return line;
  }
  function answer(line, terms) {
    var page = window.housesearch.pages[line[0]];
    var link = document.createElement("a");
    link.href = new URL(page[0] + (line[1] ? "#" + line[1] : ""), base);
    var place = [page[1], line[3]]
      .filter(function (part) {
        return part && part !== line[2];
      })
      .join(" › ");
    link.append(
      marked("answer-name", line[2], terms),
      " ",
      marked("answer-place", place, new Set()),
      " ",
      marked("answer-said", cut(line[4] || below(line), terms), terms),
    );
    var item = document.createElement("li");
    item.append(link);
    return item;
  }
  function counted(found) {
    if (!found.lines.length) return "Nothing found. Try fewer words, or the contents.";
    var many =
      found.lines.length > MOST
        ? "Found " + found.lines.length + ", the first " + MOST + " shown"
        : "Found " + found.lines.length;
    if (found.without.length) return many + ", without " + found.without.join(", ");
    return found.missing ? many + ", with some of the words" : many;
  }
  function show() {
    var words = field.value.trim();
    open(words !== "");
    if (!words) return list.replaceChildren();
    begin().then(
      function () {
        if (field.value.trim() !== words) return;
        var found = window.housesearch.answers(words);
        list.replaceChildren.apply(
          list,
          found.lines.slice(0, MOST).map(function (line) {
            return answer(line, found.terms);
          }),
        );
        list.dataset.asked = words;
        told.textContent = counted(found);
        box.querySelector(".search-scroll").scrollTop = 0;
      },
      function () {},
    );
  }
  function links() {
    return Array.from(list.querySelectorAll("a"));
  }
  function step(by) {
    var all = links(),
      at = all.indexOf(document.activeElement) + by;
    if (at < 0) field.focus();
    else if (all[at]) all[at].focus();
  }
  var KEYS = {
    ArrowDown: function () {
      step(1);
    },
    ArrowUp: function () {
      step(-1);
    },
    Escape: function () {
      open(false);
      field.blur();
    },
  };

  field.addEventListener("focus", function () {
    begin().catch(function () {});
    if (field.value.trim()) show();
  });
  field.addEventListener("input", show);
  box.querySelector("form").addEventListener("submit", function (event) {
    event.preventDefault();
    if (links().length) links()[0].click();
  });
  box.querySelector("form").addEventListener("reset", function () {
    setTimeout(function () {
      show();
      field.focus();
    });
  });
  box.addEventListener("keydown", function (event) {
    if (!KEYS[event.key] || (event.key.indexOf("Arrow") === 0 && !box.hasAttribute("data-open")))
      return;
    event.preventDefault();
    KEYS[event.key]();
  });
  // A line of this same page is behind the answers.
  list.addEventListener("click", function (event) {
    if (event.target.closest("a")) open(false);
  });
  addEventListener("hashchange", function () {
    open(false);
  });
  box.addEventListener("focusout", function (event) {
    if (event.relatedTarget && !box.contains(event.relatedTarget)) open(false);
  });
  document.addEventListener("click", function (event) {
    if (!box.contains(event.target)) open(false);
  });
  document.addEventListener("keydown", function (event) {
    var writing = event.target.closest("input, textarea, select, [contenteditable]");
    if (event.key !== "/" || writing || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    field.focus();
  });
})();
