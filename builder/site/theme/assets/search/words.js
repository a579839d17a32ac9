// Words of a text as the search knows them: 400A, 400 A and 400 amps are one; R4-3 is a name and its parts; docks is dock.
window.housesearch = window.housesearch || {};
(function (search) {
  var SPELLED = {
    a: "a amp amps ampere amperes",
    v: "v volt volts",
    w: "w watt watts",
    kw: "kw",
    va: "va",
    kva: "kva",
    kg: "kg kgs kilo kilos",
    t: "t tonne tonnes ton tons",
    lb: "lb lbs pound pounds",
    n: "n",
    kn: "kn",
    mm: "mm",
    cm: "cm",
    m: "m metre metres meter meters",
    km: "km",
    ft: "ft foot feet",
    in: "in inch inches",
    m2: "m2 sqm",
    hz: "hz hertz",
    khz: "khz",
    mhz: "mhz",
    db: "db dba dbc dbz decibel decibels",
    pa: "pa",
    kpa: "kpa",
    s: "s sec",
    ms: "ms",
    min: "min mins minute minutes",
    pin: "pin pins",
    way: "way ways",
    phase: "phase phases",
    ch: "ch channel channels",
  };
  var UNIT = {};
  Object.keys(SPELLED).forEach(function (unit) {
    SPELLED[unit].split(" ").forEach(function (word) {
      UNIT[word] = unit;
    });
  });
  var UNITS = Object.keys(UNIT)
    .sort(function (a, b) {
      return b.length - a.length;
    })
    .join("|");
  var WORD = new RegExp(
    "(\\d[\\d.,]*)[\\s\\u00a0-]?(" +
      UNITS +
      ")(?![\\p{L}\\p{N}])|[\\p{L}\\p{N}]+(?:[-–'’.,:/][\\p{L}\\p{N}]+)*",
    "gu",
  );

  // As long as the text it came from, letter for letter, so that a place in one is a place in the other.
  function plain(text) {
    return Array.from(text)
      .map(function (letter) {
        var bare = letter.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase();
        return bare.length === letter.length ? bare : letter;
      })
      .join("")
      .replace(/(\d)'/g, "$1 ")
      .replace(/(\d)"/g, "$1 ");
  }
  function number(text) {
    var digits = text
      .replace(/[.,]+$/, "")
      .replace(/,(?=\d{3}(?!\d))/g, "")
      .replace(",", ".");
    return /^\d+(\.\d+)?$/.test(digits) ? String(Number(digits)) : digits;
  }
  function stem(word) {
    if (/^[\d.,]+$/.test(word)) return number(word);
    if (word.length < 4 || /\d/.test(word)) return word;
    return word
      .replace(/ies$/, "y")
      .replace(/(ss|sh|ch|x)es$/, "$1")
      .replace(/([^su])s$/, "$1");
  }
  // A word joined from parts: the whole of it, and the parts for who asks for one of them.
  function joined(word) {
    if (/^[\d.,]+$/.test(word)) return { term: number(word), parts: [] };
    var parts = word.split(/[^\p{L}\p{N}]+/u);
    return { term: stem(parts.join("")), parts: parts.length > 1 ? parts.map(stem) : [] };
  }
  // Each word with its place in the text.
  search.wordsOf = function (text) {
    var found = [];
    plain(text).replace(WORD, function (all, digits, unit, at) {
      var word = digits
        ? { term: number(digits) + UNIT[unit], parts: [number(digits)] }
        : joined(all);
      found.push({ term: word.term, parts: word.parts, from: at, to: at + all.length });
      return all;
    });
    return found;
  };
  // One slip for a word of four letters, two for one of eight: a letter too many, too few, another, or two that changed places.
  search.near = function (asked, word) {
    var most = asked.length < 4 ? 0 : asked.length < 8 ? 1 : 2;
    if (!most || /\d/.test(asked) || Math.abs(asked.length - word.length) > most) return 0;
    var slips = distance(asked, word);
    return slips <= most ? slips : 0;
  };
  function distance(one, other) {
    var rows = [
      Array.from({ length: other.length + 1 }, function (_, place) {
        return place;
      }),
    ];
    for (let i = 1; i <= one.length; i++) {
      rows[i] = [i];
      for (let j = 1; j <= other.length; j++) {
        const same = one[i - 1] === other[j - 1] ? 0 : 1;
        rows[i][j] = Math.min(rows[i - 1][j] + 1, rows[i][j - 1] + 1, rows[i - 1][j - 1] + same);
        const swapped =
          i > 1 && j > 1 && one[i - 1] === other[j - 2] && one[i - 2] === other[j - 1];
        if (swapped) rows[i][j] = Math.min(rows[i][j], rows[i - 2][j - 2] + 1);
      }
    }
    return rows[one.length][other.length];
  }
})(window.housesearch);
