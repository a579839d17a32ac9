// Which line of the pack answers first. A line's own name weighs most, then what it stands under, then what it says; the pack comes before
// the guides. assets/search/entries.js brings `pages` ([address, title, weight]), `lines` ([page, anchor, name, under, text, folded away]) and
// `aliases`.
(function (search) {
  var NAME = 6,
    UNDER = 2.5,
    PAGE = 2,
    TEXT = 1;
  var NONE = 0.4,
    FOLDED = 0.5;
  var EXACT = 1,
    ALIAS = 0.55,
    BEGINNING = 0.5,
    MISSPELT = 0.4;

  var MEASURE = /^\d[\d.]*[a-z]/;
  // What questions are made of, and nothing is called.
  var SMALL = new Set(
    "a an and any are at can do does for have how in is it many much of on or our the there to we what where which with you".split(
      " ",
    ),
  );

  // A word weighs more in a short name than in a long one, and adds up where it stands in several places.
  function indexed(lines, pages) {
    var places = new Map();
    function put(text, at, weight) {
      var seen = new Set();
      search.wordsOf(text).forEach(function (word) {
        [word.term].concat(word.parts).forEach(function (term) {
          if (seen.has(term)) return;
          seen.add(term);
          if (!places.has(term)) places.set(term, new Map());
          places.get(term).set(at, (places.get(term).get(at) || 0) + weight);
        });
      });
    }
    function short(text, at, weight) {
      put(text, at, weight * (0.4 + 0.6 / Math.max(1, search.wordsOf(text).length)));
    }
    lines.forEach(function (line, at) {
      short(line[2], at, NAME);
      short(line[3], at, UNDER);
      short(pages[line[0]][1], at, PAGE);
      cells(line[4]).forEach(function (cell) {
        put(cell, at, / none$/.test(cell) ? TEXT * NONE : TEXT);
      });
    });
    return places;
  }
  function cells(text) {
    return text.split("; ");
  }

  // A word such as 'constructor' is no alias, though every object of the language has one by that name.
  function aliasesOf(term) {
    return Object.hasOwn(search.aliases, term) ? search.aliases[term] : [];
  }

  // The terms of the pack that a word may mean, each with how surely it does.
  function meant(places, word, last) {
    var found = new Map();
    function add(term, sure) {
      if (places.has(term) && !(found.get(term) >= sure)) found.set(term, sure);
    }
    add(word.term, EXACT);
    var aliases = aliasesOf(word.term);
    aliases.forEach(function (term) {
      add(term, ALIAS);
    });
    var begun = last || (word.term.length > 2 && !aliases.length);
    if (begun && !(found.size && /^\d/.test(word.term)))
      places.forEach(function (_, term) {
        if (term.indexOf(word.term) === 0) add(term, BEGINNING);
      });
    if (!found.size)
      places.forEach(function (_, term) {
        var slips = search.near(word.term, term);
        if (slips) add(term, MISSPELT / slips);
      });
    return found;
  }
  // An alias of several words stands for the word that was asked.
  function spelledOut(words) {
    return words.reduce(function (all, word) {
      var whole = aliasesOf(word.term).find(function (alias) {
        return alias.indexOf(" ") > 0;
      });
      return all.concat(whole ? search.wordsOf(whole) : word);
    }, []);
  }
  // A name that is not there as a whole may be there in parts, if each of them is.
  function asked(places, text) {
    var words = search.wordsOf(text);
    var large =
      words.length > 2
        ? words.filter(function (word) {
            return !SMALL.has(word.term);
          })
        : words;
    return spelledOut(large.length ? large : words).reduce(function (all, word) {
      var whole = { term: word.term, meant: meant(places, word, word === words[words.length - 1]) };
      var parts = whole.meant.size
        ? []
        : word.parts.map(function (part) {
            return { term: part, meant: meant(places, { term: part, parts: [] }, false) };
          });
      var held =
        parts.length &&
        parts.every(function (part) {
          return part.meant.size;
        });
      return all.concat(held ? parts : whole);
    }, []);
  }
  function scores(places, word, count) {
    var best = new Map();
    word.meant.forEach(function (sure, term) {
      var found = places.get(term);
      var rare = Math.log(1 + count / found.size);
      found.forEach(function (weight, at) {
        var score = sure * weight * rare;
        if (!(best.get(at) >= score)) best.set(at, score);
      });
    });
    return best;
  }
  function terms(text) {
    return search.wordsOf(text).map(function (word) {
      return word.term;
    });
  }
  function same(one, other) {
    return (
      one.length === other.length && one.slice().sort().join(" ") === other.slice().sort().join(" ")
    );
  }
  function within(words, all) {
    return (" " + all.join(" ") + " ").indexOf(" " + words.join(" ") + " ") >= 0;
  }
  // The name itself before names that begin so, and those before names that hold it somewhere.
  function named(line, wanted) {
    var name = terms(line[2]);
    if (name.join("") === wanted.join("")) return line[1] ? (line[3] ? 4 : 6) : 8;
    if (within(wanted, name.slice(0, wanted.length))) return 1.6;
    return within(wanted, name) ? 1.4 : 1;
  }
  // 'Dock height' asks for the height among the docks, 'R4-3 left' for what is left of it, '400 A' for where that is the value.
  function answering(line, wanted) {
    var name = terms(line[2]),
      under = terms(line[3]);
    return cells(line[4]).reduce(function (best, cell) {
      var colon = cell.indexOf(": ");
      var label = colon < 0 ? [] : terms(cell.slice(0, colon)),
        value = terms(cell.slice(colon < 0 ? 0 : colon + 2));
      if (label.length && (same(wanted, name.concat(label)) || same(wanted, under.concat(label))))
        return Math.max(best, 3);
      if (within(wanted, value.slice(0, wanted.length)))
        return Math.max(best, MEASURE.test(wanted.join(" ")) ? 4.5 : 1.8);
      if (same(wanted, label)) return Math.max(best, 1.8);
      return within(wanted, terms(cell)) ? Math.max(best, 1.25) : best;
    }, 1);
  }

  search.ready = function () {
    var lines = search.lines,
      pages = search.pages,
      places = indexed(lines, pages);
    // The lines that answer, best first, with the words that no line on the list holds and the terms that were taken for what was asked.
    search.answers = function (text) {
      var words = asked(places, text);
      var wanted = words.map(function (word) {
        return word.term;
      });
      var found = new Map();
      words.forEach(function (word) {
        scores(places, word, lines.length).forEach(function (score, at) {
          var line = found.get(at) || { at: at, score: 0, held: 0 };
          line.score += score;
          line.held += 1;
          found.set(at, line);
        });
      });
      var most = Math.max.apply(
        null,
        [0].concat(
          Array.from(found.values(), function (line) {
            return line.held;
          }),
        ),
      );
      var kept = Array.from(found.values()).filter(function (line) {
        return line.held === most;
      });
      kept.forEach(function (line) {
        var entry = lines[line.at];
        line.score *=
          pages[entry[0]][2] *
          (entry[5] ? FOLDED : 1) *
          Math.max(named(entry, wanted), answering(entry, wanted));
        line.score /= 1 + 0.1 * Math.log(1 + entry[4].length / 60);
      });
      kept.sort(function (a, b) {
        return b.score - a.score || a.at - b.at;
      });
      return {
        lines: kept.map(function (line) {
          return lines[line.at];
        }),
        without:
          most < words.length
            ? words
                .filter(function (word) {
                  return !word.meant.size;
                })
                .map(function (word) {
                  return word.term;
                })
            : [],
        missing: words.length - most,
        terms: new Set(
          words.reduce(function (all, word) {
            return all.concat(Array.from(word.meant.keys()));
          }, []),
        ),
      };
    };
  };
})(window.housesearch);
