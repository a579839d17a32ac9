// From doors to the last truck. Twin of builder/fit/clock/evening.py.
(function (fit) {
  "use strict";
  const { ASK, FITS, SHORT, verdict, factOf, settled, ageNotes, digits, clock: clockWords, lasting, PRACTICE, saidByHouse, ofTheShow } = fit;
  const MINUTE_S = 60;
  const GAP = "how long from the last note of the act before to your first, all in or by its parts? Commonly 15 to 30 min all in" + PRACTICE;
  const RATE = "how many lines do you check in a minute? Commonly 4 to 6 with two people at the patch" + PRACTICE;
  const PARTS = [
    ["roll on", "rolling on", "how long do you roll on and set?"],
    ["patch", "patch", "how long do you patch, or 0 min where it is patched before?"],
    ["monitors", "monitors", "how long for wedges, in-ears and vocal positions?"],
    ["spare", "spare", "how much do you keep for what goes wrong, or 0 min?"],
  ];
  const LOAD_OUT = "how long from your last note until your last truck is closed? Commonly 1 to 4 h" + PRACTICE;

  function judgedLength(requirement, slack, said) {
    const words = lasting(slack);
    const found = verdict(requirement, slack >= 0 ? FITS : SHORT, said + (slack >= 0 ? words + " to spare." : "short by " + words + "."));
    found.margin = [(slack < 0 ? "−" : slack > 0 ? "+" : "") + words, ""];
    return found;
  }

  function askedFor(requirement, asks, reason) {
    const found = verdict(requirement, ASK, reason);
    found.question = asks.join(" ") + " (" + requirement.title + ".)";
    return found;
  }

  function changeoverOf(before, act) {
    const clock = act.clock, stated = clock.changeover;
    const allIn = () => ({ s: stated, asks: [], said: "All in " + lasting(stated), linesS: 0, notes: [] });
    if (clock.parts === null && stated === null) return { s: 0, asks: [act.act + ": " + GAP], said: "", linesS: 0, notes: [] };
    if (clock.parts === null) return allIn();
    const found = addedUp(before, act, clock.parts);
    if (stated !== null && found.asks.length > 0 && found.s <= stated) return allIn();
    if (stated !== null && stated > found.s) return { ...found, s: stated, said: "All in " + lasting(stated) + ", more than its parts of " + lasting(found.s), linesS: 0 };
    if (stated !== null && stated < found.s) found.notes = ["The rider says " + lasting(stated) + " all in; its own parts are more, and they count."];
    return found;
  }

  function addedUp(before, act, parts) {
    let asks = [], words = [], total = 0;
    const strike = before.clock.strike;
    if (strike === null) asks.push(before.act + ": how long do you take to clear the deck after your last note? Commonly 5 to 10 min" + PRACTICE);
    else {
      total += strike;
      words.push("strike " + lasting(strike));
    }
    const lines = linesOf(act, parts);
    for (const [key, said, question] of PARTS) {
      if (key === "monitors") {
        total += lines.s;
        words = [...words, ...lines.words];
        asks = [...asks, ...lines.asks];
      }
      if (parts[key] === null) asks.push(act.act + ": " + question);
      else {
        total += parts[key];
        words.push(said + " " + lasting(parts[key]));
      }
    }
    return { s: total, asks, said: words.length > 0 ? "It takes " + words.join(" + ") + " = " + lasting(total) : "", linesS: lines.s, notes: [] };
  }

  function linesOf(act, parts) {
    if (parts.before) return { s: 0, words: ["lines checked before"], asks: [] };
    const asks = [], rate = parts["lines a minute"];
    if (parts.lines === null) asks.push(act.act + ": how many lines do you check?");
    if (rate === null && parts.lines !== 0) asks.push(act.act + ": " + RATE);
    if (asks.length > 0 || parts.lines === 0) return { s: 0, words: [], asks };
    const length = (parts.lines * MINUTE_S) / rate;
    return { s: length, words: [digits(parts.lines, 0) + " lines at " + digits(rate, 0) + " a minute " + lasting(length)], asks };
  }

  function changeover(requirement, before, act) {
    const needed = changeoverOf(before, act), open = needed.asks.length > 0;
    if (before.endsS === null) {
      const asks = [before.act + ": when does your last note end, or how long is your set?", ...needed.asks];
      return askedFor(requirement, asks, "Nobody has said when " + before.act + " ends.");
    }
    const gap = act.startsS - before.endsS, slack = gap - needed.s;
    const said = clockWords(before.endsS) + " to " + clockWords(act.startsS) + " is " + (gap < 0 ? "−" : "") + lasting(gap) + ". ";
    if (slack >= 0 && open) return askedFor(requirement, needed.asks, said + "Not all that decides is known.");
    const found = judgedLength(requirement, slack, said + (needed.said !== "" ? needed.said + (open ? " so far" : "") + ": " : ""));
    found.notes = needed.notes;
    if (open) found.question = needed.asks.join(" ") + " (" + requirement.title + ".)";
    return slack < 0 ? quicker(settled(found), before, act, needed.linesS, -slack) : settled(found);
  }

  function quicker(found, before, act, lines, short) {
    const ways = [];
    if (lines > 0) ways.push("check the lines of " + act.act + " during the set before, which saves " + lasting(lines) + (lines >= short ? "" : ", which is not all of it"));
    if (before.clock.set !== null && before.clock.set > short) ways.push("shorten the set of " + before.act + " to " + lasting(before.clock.set - short));
    ways.push(act.act + " begins at " + clockWords(act.startsS + short));
    found.remedy = "What helps: " + ways.join("; ") + ".";
    found.who = "the acts and the house crew";
    return found;
  }

  function setCloses(requirement, act) {
    const first = ofTheShow(act.clock["on stage"]), last = ofTheShow(act.clock.ends), length = act.clock.set;
    const found = judgedLength(requirement, last - first - length, clockWords(first) + " and " + lasting(length) + ", until " + clockWords(last) + ": ");
    if (found.verdict === SHORT) {
      found.remedy = "Begin earlier, play less, or end later where the curfew allows it.";
      found.who = "the show";
    }
    return found;
  }

  function afterDoors(requirement, first, doors, section) {
    const kept = saidByHouse(section, "identity", "doors_before_show");
    const gap = first.startsS - doors, said = clockWords(doors) + " to " + clockWords(first.startsS) + ": ";
    if (kept.standing === "ask" && gap >= 0) {
      const ask = "How long must there be from doors to the first act? Commonly 30 to 60 min" + PRACTICE;
      return askedFor(requirement, [ask], lasting(gap) + " from doors. The house has not said how long it wants.");
    }
    const wanted = kept.s !== null ? kept.s : 0;
    const found = judgedLength(requirement, gap - wanted, said + (wanted > 0 ? "the house wants " + lasting(wanted) + ", " : ""));
    if (kept.item !== null) {
      found.fact = factOf(kept.value, kept.item);
      found.notes = found.verdict === FITS ? ageNotes(kept.value) : [];
    }
    if (found.verdict === SHORT) {
      found.remedy = "Open doors earlier, or begin later.";
      found.who = "the promoter and the house";
    }
    return settled(found);
  }

  function loadOut(requirement, act, section) {
    const limit = saidByHouse(section, "identity", "load_out_until"), length = act.clock["load out"];
    if (limit.standing === "ask") return askedFor(requirement, ["Until when may we load out?"], "The house has not said.");
    let found;
    if (limit.standing === "none") found = verdict(requirement, FITS, "The house sets no hour.");
    else if (length === null) found = askedFor(requirement, [act.act + ": " + LOAD_OUT], "Nobody has said how long it takes.");
    else {
      const until = ofTheShow(limit.s), end = act.endsS + length;
      const said = clockWords(act.endsS) + " and " + lasting(length) + " is " + clockWords(end);
      found = judgedLength(requirement, until - end, said + ", until " + clockWords(until) + ": ");
      found.notes = found.verdict === FITS ? ageNotes(limit.value) : [];
    }
    if (found.verdict === SHORT) {
      found.remedy = "End earlier, order more loaders, or leave trucks until the morning.";
      found.who = "the show and the house";
    }
    found.fact = factOf(limit.value, limit.item);
    return settled(found);
  }

  function crewDay(requirement, start, act, section) {
    const longest = saidByHouse(section, "crew", "longest_call"), shortest = saidByHouse(section, "crew", "shortest_call");
    const length = act.clock["load out"], end = act.endsS + length;
    const said = clockWords(start) + " to " + clockWords(end) + " is " + lasting(end - start);
    if (longest.standing === "ask") {
      const ask = "How long may one crew work on one day? Commonly 10 to 14 h" + PRACTICE;
      return askedFor(requirement, [ask], said + ". The house has not said how long one crew may work.");
    }
    let found;
    if (longest.standing === "none") found = verdict(requirement, FITS, said + ". The house sets no longest call.");
    else found = judgedLength(requirement, longest.s - (end - start), said + " of " + lasting(longest.s) + ": ");
    found.fact = factOf(longest.value, longest.item);
    if (found.verdict === SHORT) {
      found.remedy = "Order a second crew for part of the day, or shorten it.";
      found.who = "the promoter";
    } else {
      found.notes = ageNotes(longest.value);
      if (shortest.s !== null && length < shortest.s) found.notes.push("A crew called for the load-out alone: " + lasting(length) + " is paid as the shortest call of " + lasting(shortest.s) + ".");
    }
    return settled(found);
  }

  Object.assign(fit, { askedFor, changeoverOf, changeover, setCloses, afterDoors, loadOut, crewDay });
})((window.housefit = window.housefit || {}));
