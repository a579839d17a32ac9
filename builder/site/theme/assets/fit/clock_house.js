// What the house says of the working day. Twin of builder/fit/clock/house.py.
(function (fit) {
  "use strict";
  const { valueOf, ageNotes } = fit;
  const PRACTICE = " (common practice, no source).";
  const MEALS = "After how long is a meal break due, and how long does work stop for it? Commonly after 5 h, for 30 to 60 min (common practice, no source); none where the crew eats by turns.";
  const QUIET = "Are there hours in which no check may be heard, and on which days?";
  const READY = "How long before doors must the last check have ended? Commonly 15 to 30 min" + PRACTICE;
  const SHORTEST_S = 900;

  function saidByHouse(section, kind, name) {
    for (const item of section !== null ? section.items : []) {
      const value = item.kind === kind ? valueOf(item, name) : null;
      if (value !== null) {
        if (value.standing === "none") return { standing: "none", s: null, value, item };
        if (value.standing === "stated" && value.number !== null) return { standing: "stated", s: value.number, value, item };
      }
    }
    return { standing: "ask", s: null, value: null, item: null };
  }

  function mealsOf(section) {
    const after = saidByHouse(section, "crew", "meal_after"), length = saidByHouse(section, "crew", "meal_break");
    const without = { afterS: null, breakS: 0, asks: [], notes: [], dueS: null };
    if (after.standing === "none" || length.standing === "none") return without;
    if (after.standing === "stated" && after.s < SHORTEST_S) return { ...without, asks: [MEALS] };
    if (after.standing === "ask" || length.standing === "ask") return { ...without, asks: [MEALS], dueS: after.s };
    return { afterS: after.s, breakS: length.s, asks: [], notes: [...ageNotes(after.value), ...ageNotes(length.value)], dueS: after.s };
  }

  function quietOf(section, day) {
    if (saidByHouse(section, "identity", "quiet_hours").standing === "none") return { hours: [], asks: [], notes: [] };
    const items = section !== null ? section.items.filter((item) => item.kind === "quiet") : [];
    const found = { hours: [], asks: items.length > 0 ? [] : [QUIET], notes: [] };
    for (const item of items) {
      const holds = fit.holdsToday(item.name, day);
      if (holds === "yes") {
        found.hours.push(...nights(item));
        found.notes.push(...ageNotes(item.values.from));
      } else if (holds === "unclear") found.asks.push(unclear(item, day));
    }
    found.hours.sort((one, other) => one[0] - other[0] || one[1] - other[1]);
    return found;
  }

  function unclear(item, day) {
    if (day === "") return "On which day of the week is the show? Quiet hours hold on " + item.name + ".";
    return "Do the quiet hours of " + item.name + " hold on that day?";
  }

  function nights(item) {
    const first = item.values.from.number;
    const last = item.values.until.number <= first ? item.values.until.number + fit.DAY_S : item.values.until.number;
    return [[first - fit.DAY_S, last - fit.DAY_S], [first, last], [first + fit.DAY_S, last + fit.DAY_S]];
  }

  Object.assign(fit, { PRACTICE, READY, saidByHouse, mealsOf, quietOf });
})((window.housefit = window.housefit || {}));
