// The day as a table. Twin of builder/fit/clock/table.py.
(function (fit) {
  "use strict";
  const { clock: clockWords, lasting } = fit;
  const NOT_KNOWN = "?";
  const SPARE = "to spare";
  const BEFORE_ALL_S = -604800;

  function table(acts, before, section) {
    const doors = fit.doorsOf(acts).s, last = acts[acts.length - 1], length = last.clock["load out"];
    const early = before.length > 0 ? byStart([...before, ...readyRows(doors, section)]) : [];
    const rows = withSpare([...early, ...doorsRows(doors, acts[0])]);
    acts.forEach((act, index) => {
      if (index > 0) rows.push(gapRow(acts[index - 1], act));
      rows.push(setRow(act));
    });
    rows.push(...curfewRows(acts, section));
    if (last.endsS !== null && length !== null) rows.push(row(last.endsS, last.endsS + length, "load-out", last.act));
    return byStart(rows).map(wordsOf);
  }

  function byStart(rows) {
    let start = BEFORE_ALL_S;
    const placed = rows.map((each) => [(start = each.fromS !== null ? each.fromS : start), each]);
    return placed.sort(([one], [other]) => one - other).map(([, each]) => each);
  }

  function row(fromS, toS, what, whose) {
    return { fromS, toS, lengthS: fromS !== null && toS !== null && toS !== fromS ? toS - fromS : null, what, whose };
  }

  function wordsOf(each) {
    return {
      start: each.fromS !== null ? clockWords(each.fromS) : NOT_KNOWN,
      end: each.toS !== null ? clockWords(each.toS) : NOT_KNOWN,
      long: each.lengthS !== null ? (each.lengthS < 0 ? "−" : "") + lasting(each.lengthS) : "",
      what: each.what,
      whose: each.whose,
    };
  }

  function readyRows(doors, section) {
    const ready = fit.saidByHouse(section, "identity", "checks_end_before_doors");
    return doors === null || ready.s === null || ready.s === 0 ? [] : [row(doors - ready.s, doors, "hall made ready", "House")];
  }

  function doorsRows(doors, first) {
    if (doors === null) return [];
    return [row(doors, first.startsS !== null && first.startsS > doors ? first.startsS : doors, "doors", "House")];
  }

  function withSpare(rows) {
    const found = [];
    let end = null;
    for (const each of rows) {
      if (end !== null && each.fromS !== null && end < each.fromS) found.push(row(end, each.fromS, SPARE, ""));
      found.push(each);
      end = end !== null && each.toS !== null ? Math.max(end, each.toS) : each.toS;
    }
    return found;
  }

  function gapRow(before, act) {
    const needed = fit.changeoverOf(before, act);
    if (before.endsS === null || needed.asks.length > 0) return row(before.endsS, null, "changeover", act.act);
    return row(before.endsS, before.endsS + needed.s, "changeover", act.act);
  }

  function setRow(act) {
    return row(act.startsS, act.endsS, "set", act.act);
  }

  function curfewRows(acts, section) {
    const day = fit.dayOf(acts);
    const items = section !== null ? section.items.filter((item) => item.kind === "curfew" && fit.holdsToday(item.name, day) === "yes") : [];
    return items.map((item) => {
      const time = fit.ofTheShow(item.values.music_ends.number);
      return row(time, time, "curfew", "House");
    });
  }

  Object.assign(fit, { table });
})((window.housefit = window.housefit || {}));
