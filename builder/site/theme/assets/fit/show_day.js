// Several acts on one day. Twin of builder/fit/show_day.py.
(function (fit) {
  "use strict";
  const { FITS, SHORT, verdict, withRemedy, factOf, settled, valueOf, sectionOf, asked, answered, chosen, signed, both } = fit;
  const THE_DAY = "The day";
  const AISLE_M = 0.9;
  const DEPTH = "stage depth";

  function dayRequirements(riders, pack) {
    const found = [];
    for (const rule of pack.rules) {
      if (rule.day === "sum") {
        const asking = riders.flatMap((rider) => rider.requirements.filter((each) => each.sort === "rule" && each.what === rule.key && countsToday(each)));
        if (new Set(asking.map((each) => each.act)).size > 1) found.push(together(rule, asking));
      }
    }
    return found;
  }

  function countsToday(requirement) {
    return requirement.way === "at least" && requirement.carried !== "show";
  }

  function together(rule, asking) {
    let total = 0;
    for (const each of asking) total += each.low;
    const parts = asking.map((each) => both(rule.kind, each.low)[0]).join(" + ");
    return {
      ...asking[0],
      act: THE_DAY,
      line: 0,
      need: "at least " + both(rule.kind, total)[0] + " together (" + parts + ")",
      low: total,
      strictness: asking.some((each) => each.strictness === "must") ? "must" : "should",
      configuration: "",
    };
  }

  function staysOnDeck(riders, pack) {
    const found = [];
    if (riders.length < 2) return found;
    const rule = pack.rules.find((each) => each.key === DEPTH);
    for (const rider of riders) {
      const wish = rider.requirements.find((each) => each.sort === "rule" && each.what === DEPTH && each.way === "at least");
      const others = riders.filter((other) => other.act !== rider.act && (other.stays_m === null || other.stays_m > 0));
      if (rule && wish && others.length > 0) found.push(inFront(wish, others, rule, pack));
    }
    return found;
  }

  function inFront(wish, others, rule, pack) {
    const requirement = { ...wish, act: THE_DAY, title: "Deck depth for " + wish.act + " in front of what stays", line: 0 };
    const silent = others.filter((other) => other.stays_m === null).map((other) => other.act);
    if (silent.length > 0) {
      const found = asked(requirement, rule, "Nobody has said how deep what stays on deck is: " + silent.join(", ") + ".");
      found.question = "How deep is what stays on deck while others play? (" + silent.join(", ") + ")";
      return found;
    }
    const section = sectionOf(pack, rule.section);
    const items = section !== null ? chosen(section, rule, requirement) : [];
    const depths = items.filter((item) => valueOf(item, rule.value) !== null && item.values[rule.value].number !== null && item.condition !== "out of service");
    if (depths.length === 0) return asked(requirement, rule, "The house has not said.");
    let deepest = depths[0];
    for (const item of depths) if (item.values[rule.value].number > deepest.values[rule.value].number) deepest = item;
    return withDepth(requirement, others, rule, deepest);
  }

  function withDepth(requirement, others, rule, deck) {
    const value = deck.values[rule.value];
    let kept = 0;
    for (const other of others) kept += other.stays_m;
    const slack = value.number - kept - AISLE_M - requirement.low;
    const words = both("length", Math.abs(slack));
    const sum = both("length", value.number)[0] + " less " + both("length", kept)[0] + " that stays and " + both("length", AISLE_M)[0] + " aisle: ";
    let found;
    if (slack >= 0) {
      found = verdict(requirement, FITS, sum + words[0] + " to spare.");
      found.notes = answered(requirement, rule, deck).notes;
    } else {
      found = withRemedy(verdict(requirement, SHORT, sum + "short by " + words[0] + "."), rule);
    }
    found.fact = factOf(value, deck);
    found.margin = signed(words, slack);
    return settled(found);
  }

  Object.assign(fit, { dayRequirements, staysOnDeck });
})((window.housefit = window.housefit || {}));
