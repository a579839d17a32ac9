// Trucks and the largest case against one way in, taken whole. Twin of builder/fit/way_in/.
(function (fit) {
  "use strict";
  const { FITS, SHORT, ASK, verdict, withRemedy, factOf, settled, valueOf, textOf, asked, ageNotes, itemNotes, both } = fit;
  const WAY_IN = {
    question: "How do trucks come, how long and high may they be, and how wide and high is the tightest opening from the dock to the deck?",
    remedy: "Load into smaller trucks, or split the largest case.",
    who: "the show",
  };
  const APPROACH = [
    ["truck length", "length", "longest_truck", "length"],
    ["truck height", "height", "lowest_clearance", "length"],
    ["truck weight", "weight", "weight_limit", "mass"],
  ];
  const ROUTE = [
    ["case width", "case_width", "tightest_width", "length"],
    ["case height", "case_height", "tightest_height", "length"],
    ["case weight", "case_weight", "tightest_weight", "mass"],
  ];
  const NO_SIZE = "The rider gives no size of a truck or a case, so no way in can be judged.";
  const MIX_POSITION = "Mix position";

  function trucksGetIn(requirement, section) {
    const docks = section !== null ? section.items.filter((item) => item.kind === "dock") : [];
    if (docks.length === 0) return asked(requirement, WAY_IN, "The house has not said.");
    if ([...APPROACH, ...ROUTE].every(([, wish]) => requirement[wish] === null)) return asked(requirement, WAY_IN, NO_SIZE);
    const found = docks.flatMap((dock) => waysBy(section, dock)).map((way) => byWay(requirement, way));
    let one = found[0];
    for (const other of found) if (rank(other) < rank(one)) one = other;
    return settled(one);
  }

  function rank(found) {
    return { [FITS]: 0, [ASK]: 2, [SHORT]: 3 }[found.verdict] + (found.verdict === FITS && found.notes.length > 0 ? 1 : 0);
  }

  function waysBy(section, dock) {
    const name = textOf(dock, "approach");
    const approach = section.items.find((item) => item.kind === "approach" && item.name === name) || null;
    const routes = section.items.filter(
      (item) => item.kind === "route" && textOf(item, "from_dock") === dock.name && textOf(item, "to_place") !== MIX_POSITION
    );
    return routes.length === 0 ? [{ dock, approach, route: null }] : routes.map((route) => ({ dock, approach, route }));
  }

  function byWay(requirement, way) {
    const words = { fits: [], ask: [], short: [] };
    let fact = null;
    for (const [holder, tests] of [[way.approach, APPROACH], [way.route, ROUTE]]) {
      for (const [title, wish, value, kind] of tests) {
        if (requirement[wish] !== null) {
          const outcome = passes(requirement[wish], holder, value, kind);
          words[outcome.word].push(title + " " + outcome.words);
          if (fact === null && outcome.fact !== null) fact = outcome.fact;
          if (outcome.word === "short") fact = outcome.fact;
        }
      }
    }
    const found = summary(requirement, way, words);
    found.fact = fact;
    return found;
  }

  function passes(wanted, holder, name, kind) {
    const value = holder !== null ? valueOf(holder, name) : null;
    if (value === null || ["unknown", "not stated"].includes(value.standing)) return { word: "ask", words: "not stated", fact: null };
    const fact = factOf(value, holder);
    if (value.standing === "none" || value.text === "no limit") return { word: "fits", words: "not limited", fact };
    if (value.number === null) return { word: "ask", words: "not stated", fact };
    const slack = value.number - wanted;
    const allowed = kind === "length" ? fit.LENGTH_TOLERANCE_M : wanted * fit.SHARE_TOLERANCE;
    const words = both(kind, Math.abs(slack))[0];
    if (slack >= -allowed) return { word: "fits", words: slack >= 0 ? words + " to spare" : words + " short, within the tolerance", fact };
    return { word: "short", words: "short by " + words, fact };
  }

  function summary(requirement, way, words) {
    const by = "By " + way.dock.name + ": ";
    const parts = [way.approach, way.dock, way.route].filter((holder) => holder !== null);
    if (!parts.every(usable)) return withRemedy(verdict(requirement, SHORT, by + "not in use."), WAY_IN);
    if (words.short.length > 0) return withRemedy(verdict(requirement, SHORT, by + words.short.join("; ") + "."), WAY_IN);
    if (words.ask.length > 0) return asked(requirement, WAY_IN, by + words.ask.join("; ") + ".");
    const found = verdict(requirement, FITS, by + words.fits.join("; ") + ".");
    const tight = words.fits.filter((each) => each.endsWith("within the tolerance")).map((each) => each + ".");
    found.notes = [...parts.flatMap(itemNotes), ...waiting(requirement, way.dock), ...tight];
    return found;
  }

  function usable(holder) {
    return holder.condition !== "out of service" && holder.terms !== "not for visitors";
  }

  function waiting(requirement, dock) {
    const value = valueOf(dock, "trucks_at_once");
    const notes = ageNotes(value);
    if (value === null || value.number === null || requirement.count <= value.number) return notes;
    return [both("count", value.number)[0] + " unload at once, " + both("count", requirement.count - value.number)[0] + " wait.", ...notes];
  }

  Object.assign(fit, { trucksGetIn });
})((window.housefit = window.housefit || {}));
