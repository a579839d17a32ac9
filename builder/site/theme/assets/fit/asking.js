// A rider's plain data as requirements in SI, with what cannot be read. Twin of builder/rider/asked.py.
(function (fit) {
  "use strict";
  const { Unreadable, quantity, count, timeOfDay, yesNo, folded } = fit;
  const WAYS = ["at least", "at most", "between", "is"];
  const METRICS = ["equivalent level", "peak level", "maximum fast", "maximum slow"];
  const WEEKDAYS = ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"];
  const BOOKINGS = ["confirmed", "first hold", "second hold", "third hold"];
  const KEYS = {
    "": ["act", "revision", "plays", "booking", "configuration", "needs", "power", "hangs", "plot", "trucks", "clock", "level", "stays on deck", "questions", "note"],
    needs: ["what", ...WAYS, "any of", "strictness", "carried by", "note"],
    power: ["for", "current", "count", "phases", "system", "connector", "within", "of", "apart from dimmers", "strictness", "carried by"],
    trucks: ["count", "length", "height", "weight", "largest case", "strictness"],
    "largest case": ["width", "height", "weight"],
    clock: ["day", ...fit.TIMES, ...fit.LENGTHS, "changeover parts"],
    "changeover parts": ["roll on", "patch", "lines", "lines a minute", "lines checked before", "monitors", "spare"],
    level: ["at", "metric", "over", "place", "strictness"],
    revision: ["number", "on", "by"],
  };

  // { rider, plays, problems }: plays is the date or nothing; problems name the part and the entry, such as needs 2, and say what to write.
  function riderOf(data, pack, places) {
    const asking = { data, rules: new Map(pack.rules.map((rule) => [rule.key, rule])), units: pack.units, problems: [], places: places || new Map() };
    strange(asking, data, "", "");
    const act = text(asking, data, "act", "");
    if (act === "") wrong(asking, "act", "is missing; write the name of the act");
    asking.plays = date(asking, "plays");
    choice(asking, data, "booking", BOOKINGS, "confirmed", "booking");
    const requirements = [
      ...list(asking, "needs").flatMap((need, index) => slotted(needed(asking, need, index), "needs " + (index + 1))),
      ...list(asking, "power").flatMap((load, index) => slotted([powered(asking, load, index)], "power " + (index + 1))),
      ...list(asking, "hangs").flatMap((hang, index) => slotted(fit.hangsAsked(asking, hang, index, TOOLS), "hangs " + (index + 1))),
      ...slotted(fit.plotAsked(asking, list(asking, "plot"), TOOLS), "plot"),
      ...slotted(trucks(asking), "trucks"), ...slotted(clock(asking), "clock"), ...slotted(level(asking), "level"), ...slotted(questions(asking), "questions"),
    ];
    const stays = read(asking, data, "stays on deck", "length", "stays on deck");
    const issue = data.revision && typeof data.revision === "object" ? data.revision : null;
    const revision = issue ? text(asking, issue, "number", "revision") + " of " + text(asking, issue, "on", "revision") : "";
    const rider = { act, revision, stays_m: stays === null ? null : stays.si, clock: timing(asking), requirements: requirements.map((each) => (each.any ? { ...each, act, any: each.any.map((part) => ({ ...part, act })) } : { ...each, act })) };
    return { rider, plays: asking.plays === null ? "" : asking.plays.toISOString().slice(0, 10), problems: asking.problems };
  }

  // Each requirement told the part of the form that it came from.
  function slotted(requirements, slot) {
    return requirements.filter((each) => each !== null).map((each) => ({ ...each, slot }));
  }

  function wrong(asking, where, reason) {
    asking.problems.push({ where, reason });
  }

  function strange(asking, record, part, where) {
    for (const key of Object.keys(record)) if (!KEYS[part].includes(key)) wrong(asking, where || key, "has the key '" + key + "', which is not known here");
  }

  function list(asking, key) {
    const found = asking.data[key];
    if (found === undefined) return [];
    if (Array.isArray(found)) return found;
    wrong(asking, key, "should be a list; begin each entry with '- '");
    return [];
  }

  function group(asking, key) {
    const found = asking.data[key];
    if (found === undefined) return null;
    if (found !== null && typeof found === "object" && !Array.isArray(found)) return found;
    wrong(asking, key, "should be a group of keys");
    return null;
  }

  function text(asking, record, key, where) {
    const found = record[key];
    if (found === undefined) return "";
    if (typeof found !== "string") {
      wrong(asking, where || key, key + " should be one text");
      return "";
    }
    return folded(found);
  }

  function attempt(asking, where, what, reader) {
    try {
      return reader();
    } catch (failure) {
      if (!(failure instanceof Unreadable)) throw failure;
      wrong(asking, where, what + " " + failure.message);
      return null;
    }
  }

  function read(asking, record, key, kind, where) {
    const words = text(asking, record, key, where);
    return words === "" ? null : attempt(asking, where, key, () => quantity(words, kind, asking.units));
  }

  function choice(asking, record, key, choices, otherwise, where) {
    const words = text(asking, record, key, where);
    if (words === "") return otherwise;
    if (choices.includes(words)) return words;
    wrong(asking, where, key + " should be one of: " + choices.join(", "));
    return otherwise;
  }

  function lineOf(asking, record, key) {
    const place = asking.places.get(record);
    if (place === undefined) return 0;
    return key !== undefined && place.keys[key] !== undefined ? place.keys[key] : place.line;
  }

  function blank(asking, line, sort, department, title, need, more) {
    const configuration = typeof asking.data.configuration === "string" ? folded(asking.data.configuration) : "";
    return { act: "", line, sort, department, title, need, strictness: "must", carried: "house", configuration, ...more };
  }

  function needed(asking, need, index) {
    const where = "needs " + (index + 1);
    if (need === null || typeof need !== "object" || Array.isArray(need)) {
      wrong(asking, where, "should be a group of keys");
      return [];
    }
    strange(asking, need, "needs", where);
    const shared = {
      strictness: choice(asking, need, "strictness", ["must", "should"], "must", where),
      carried: choice(asking, need, "carried by", ["show", "house", "hire"], "house", where),
    };
    if (need["any of"] !== undefined) {
      if (!Array.isArray(need["any of"]) || need.what !== undefined) {
        wrong(asking, where, "write either what, or any of with a list");
        return [];
      }
      const parts = need["any of"].map((part) => ruled(asking, part, shared, where)).filter((part) => part !== null);
      if (parts.length === 0) return [];
      const title = parts.map((part) => part.title.toLowerCase()).join(" or ");
      const words = parts.map((part) => part.need).join(" or ");
      return [{ ...parts[0], sort: "any", title: title.slice(0, 1).toUpperCase() + title.slice(1), need: words, line: lineOf(asking, need), any: parts }];
    }
    return [ruled(asking, need, shared, where)];
  }

  function ruled(asking, line, shared, where) {
    if (line === null || typeof line !== "object") {
      wrong(asking, where, "should be a group of keys");
      return null;
    }
    const rule = asking.rules.get(text(asking, line, "what", where).toLowerCase());
    if (rule === undefined) {
      wrong(asking, where, "'" + text(asking, line, "what", where) + "' is nothing that can be checked; put anything else under questions");
      return null;
    }
    const ways = WAYS.filter((way) => line[way] !== undefined);
    if (ways.length > 1) {
      wrong(asking, where, rule.key + " says " + ways.join(" and ") + "; write " + (rule.ways.includes("between") ? "between for the least and the most" : "one of: " + rule.ways.join(", ")));
      return null;
    }
    if (ways.length !== 1 || !rule.ways.includes(ways[0])) {
      wrong(asking, where, rule.key + " does not say how much; write one of: " + rule.ways.join(", "));
      return null;
    }
    return valued(asking, line, shared, rule, ways[0], where);
  }

  function valued(asking, line, shared, rule, way, where) {
    const texts = (way === "between" ? line[way] : [line[way]]);
    if (!Array.isArray(texts) || texts.length !== (way === "between" ? 2 : 1) || texts.some((each) => typeof each !== "string")) {
      wrong(asking, where, way + " should be " + (way === "between" ? "a list of two values" : "one value"));
      return null;
    }
    const words = texts.map(folded);
    const values = words.map((each) => value(asking, rule, each, where));
    if (values.includes(null)) return null;
    const unknown = words.some(isUnknown);
    if (way === "between" && !unknown && values[0] > values[1]) {
      wrong(asking, where, "between is more than the second; write the least first");
      return null;
    }
    const said = typeof values[0] === "string";
    return blank(asking, lineOf(asking, line), "rule", rule.department, rule.title, way === "between" ? words.join(" to ") : said ? values[0] : way + " " + words[0], {
      what: rule.key,
      way: unknown ? "unknown" : way,
      low: said ? 0 : values[0],
      high: said ? 0 : values[values.length - 1],
      words: said ? values[0] : "",
      ...shared,
    });
  }

  function isUnknown(words) {
    return ["unknown", "?"].includes(words.toLowerCase());
  }

  function value(asking, rule, words, where) {
    if (isUnknown(words)) return 0;
    return attempt(asking, where, rule.key + ": '" + words.slice(0, 40) + "'", () => {
      if (["permission", "yes"].includes(rule.kind)) return yesNo(words);
      return rule.kind === "count" ? count(words) : quantity(words, rule.kind, asking.units).si;
    });
  }

  function powered(asking, load, index) {
    const where = "power " + (index + 1);
    if (load === null || typeof load !== "object" || Array.isArray(load)) {
      wrong(asking, where, "should be a group of keys");
      return null;
    }
    strange(asking, load, "power", where);
    const name = text(asking, load, "for", where), current = read(asking, load, "current", "current", where);
    if (name === "" || text(asking, load, "current", where) === "") wrong(asking, where, "needs for and current");
    if (name === "" || current === null) return null;
    const number = text(asking, load, "count", where) === "" ? 1 : attempt(asking, where, "count", () => count(load.count));
    const phases = choice(asking, load, "phases", ["three", "single"], "three", where);
    const [system, connector, of] = ["system", "connector", "of"].map((key) => text(asking, load, key, where));
    const within = read(asking, load, "within", "length", where);
    const apart = text(asking, load, "apart from dimmers", where) === "" ? "no" : attempt(asking, where, "apart from dimmers", () => yesNo(load["apart from dimmers"]));
    if (phases === "three" && number !== null && number !== 1) {
      wrong(asking, where, "count " + number + " counts single-phase circuits, and this load is on three phases; add phases: single, or write a line for each feed of three phases");
    }
    if (within !== null && of === "") wrong(asking, where, "within does not say of what; add of, with a place of the house");
    if (number === null || apart === null) return null;
    const parts = [
      phases === "single" ? number + " × " + folded(load.current) : folded(load.current) + " on each of three phases",
      system, connector, apart === "yes" ? "apart from dimmers" : "",
      within !== null ? ("within " + folded(load.within) + " of " + of).trim() : of !== "" ? "at " + of : "",
    ];
    return blank(asking, lineOf(asking, load), "power", "power", "Power for " + name, parts.filter((part) => part !== "").join(", "), {
      strictness: choice(asking, load, "strictness", ["must", "should"], "must", where),
      carried: choice(asking, load, "carried by", ["show", "house", "hire"], "house", where),
      current_a: current.si, count: number, phases, system, connector, within_m: within === null ? null : within.si, of, apart: apart === "yes", use: name,
    });
  }

  function trucks(asking) {
    const found = group(asking, "trucks");
    if (found === null) return [];
    strange(asking, found, "trucks", "trucks");
    const box = found["largest case"] !== null && typeof found["largest case"] === "object" ? found["largest case"] : {};
    strange(asking, box, "largest case", "trucks");
    const number = attempt(asking, "trucks", "count", () => count(text(asking, found, "count", "trucks")));
    const size = (record, key, kind) => read(asking, record, key, kind, "trucks");
    const sizes = [["long", "length", found, "length"], ["high", "height", found, "length"], ["gross", "weight", found, "mass"]];
    const boxes = [["wide", "width", box, "length"], ["high", "height", box, "length"], ["heavy", "weight", box, "mass"]];
    const values = [...sizes, ...boxes].map(([, key, record, kind]) => size(record, key, kind));
    if (number === null) return [];
    const say = (parts) => parts.filter(([, key, record]) => text(asking, record, key, "trucks") !== "").map(([words, key, record]) => folded(record[key]) + " " + words);
    let need = [String(number), ...say(sizes)].join(", ");
    if (say(boxes).length > 0) need += "; largest case " + say(boxes).join(", ");
    const names = ["length", "height", "weight", "case_width", "case_height", "case_weight"];
    const numbers = Object.fromEntries(names.map((name, index) => [name, values[index] === null ? null : values[index].si]));
    return [blank(asking, lineOf(asking, found), "trucks", "access", "Trucks and the largest case", need, {
      strictness: choice(asking, found, "strictness", ["must", "should"], "must", "trucks"), count: number, ...numbers,
    })];
  }

  function clock(asking) {
    const found = group(asking, "clock");
    if (found === null) return [];
    strange(asking, found, "clock", "clock");
    const weekday = dayOf(asking, choice(asking, found, "day", WEEKDAYS, "", "clock"));
    asking.weekday = weekday;
    const time = (key) => (text(asking, found, key, "clock") === "" ? null : attempt(asking, "clock", key, () => timeOfDay(found[key])));
    const [start, end] = [time("load in"), time("ends")];
    const day = weekday.toLowerCase(), out = [];
    const first = time("on stage"), lasts = length(asking, found, "set");
    if (start !== null) out.push(blank(asking, lineOf(asking, found, "load in"), "load in", "house", "Load-in", "from " + folded(found["load in"]), { time_s: start, day }));
    if (end !== null) {
      const need = "ends at " + folded(found.ends) + (weekday !== "" ? " on a " + weekday : "");
      out.push(blank(asking, lineOf(asking, found, "ends"), "ends", "house", "End of the show", need, { time_s: end, day }));
    } else if (first !== null && lasts !== null) {
      const last = fit.ofTheShow(first) + lasts;
      const need = "ends at " + fit.clock(last) + ", from " + folded(found["on stage"]) + " for " + folded(found.set) + (weekday !== "" ? " on a " + weekday : "");
      out.push(blank(asking, lineOf(asking, found, "on stage"), "ends", "house", "End of the show", need, { time_s: last, day }));
    }
    return out;
  }

  // A date, year first, that the calendar has; null where there is none or it cannot be read.
  function date(asking, key) {
    if (asking.data[key] === undefined) return null;
    const words = text(asking, asking.data, key, key);
    const found = /^\d{4}-\d{2}-\d{2}$/.test(words) && !words.startsWith("0000") ? new Date(words + "T00:00:00Z") : new Date(NaN);
    if (!isNaN(found) && found.toISOString().slice(0, 10) === words) return found;
    wrong(asking, key, "is no day of the calendar; write year-month-day, like 2026-03-02");
    return null;
  }

  // The day of the week as written, or that of the date, which must not be another.
  function dayOf(asking, written) {
    if (asking.plays === null) return written;
    const byDate = WEEKDAYS[(asking.plays.getUTCDay() + 6) % 7];
    if (written !== "" && written !== byDate) wrong(asking, "clock", "day is " + written + ", and the date it plays is a " + byDate);
    return written !== "" ? written : byDate;
  }

  // A bare number in the day's clock is most likely minutes.
  function length(asking, record, key) {
    if (typeof record[key] === "string" && /^[0-9]+(\.[0-9]+)?$/.test(folded(record[key]))) {
      wrong(asking, "clock", key + " needs a unit; write '" + folded(record[key]) + " min'");
      return null;
    }
    const found = read(asking, record, key, "duration", "clock");
    return found === null ? null : found.si;
  }

  // The day's clock in seconds; what cannot be read was told with its requirements, or is told here.
  function timing(asking) {
    const found = asking.data.clock;
    if (found === undefined || found === null || typeof found !== "object" || Array.isArray(found)) return null;
    const parts = found["changeover parts"];
    const whole = parts !== null && typeof parts === "object" && !Array.isArray(parts);
    if (parts !== undefined && !whole) wrong(asking, "clock", "changeover parts should be a group of keys");
    if (whole) strange(asking, parts, "changeover parts", "clock");
    const written = (record, key) => text(asking, record, key, "clock") !== "";
    const clock = fit.timingOf(found, whole ? parts : null, {
      line: (record) => lineOf(asking, record),
      day: () => asking.weekday,
      time: (record, key) => (written(record, key) ? attempt(asking, "clock", key, () => timeOfDay(record[key])) : null),
      length: (record, key) => length(asking, record, key),
      count: (record, key) => (written(record, key) ? attempt(asking, "clock", key, () => count(record[key])) : null),
      yes: (record, key) => written(record, key) && attempt(asking, "clock", key, () => yesNo(record[key])) === "yes",
    });
    if (clock.parts !== null && clock.parts["lines a minute"] === 0) wrong(asking, "clock", "lines a minute is no rate; write how many lines your crew checks in a minute");
    return clock;
  }

  function level(asking) {
    const found = group(asking, "level");
    if (found === null) return [];
    strange(asking, found, "level", "level");
    const at = read(asking, found, "at", "level", "level"), over = read(asking, found, "over", "duration", "level");
    if (text(asking, found, "at", "level") === "") wrong(asking, "level", "needs at, such as 100 dB(A)");
    if (at === null) return [];
    const metric = choice(asking, found, "metric", METRICS, "", "level"), place = text(asking, found, "place", "level");
    const parts = [folded(found.at), metric, over !== null ? "over " + folded(found.over) : "", place !== "" ? "at the " + place : ""];
    return [blank(asking, lineOf(asking, found), "level", "house", "Level of the show", parts.filter((part) => part !== "").join(", "), {
      strictness: choice(asking, found, "strictness", ["must", "should"], "must", "level"),
      level_db: at.si, weighting: at.weighting, metric, over_s: over === null ? null : over.si, place,
    })];
  }

  function questions(asking) {
    const found = list(asking, "questions"), lines = asking.places.get(asking.data.questions);
    return found.map((words, index) => {
      if (typeof words === "string" && folded(words) !== "") return blank(asking, Array.isArray(lines) ? lines[index] : 0, "question", "other", "A question", folded(words), { words: folded(words) });
      wrong(asking, "questions " + (index + 1), "should be one text");
      return null;
    });
  }

  const TOOLS = { text, attempt, read, choice, lineOf, blank, wrong };

  Object.assign(fit, { riderOf, METRICS, WEEKDAYS });
})((window.housefit = window.housefit || {}));
