// The hang plan: all hangs of all acts against points, beams, zones and roof, the house's own hangs staying up. Twin of builder/fit/hang.py.
(function (fit) {
  "use strict";
  const { ASK, FITS, SHORT, LENGTH_TOLERANCE_M, ageNotes, asked, both, itemNotes, once, sectionOf, settled, signed, verdict, withQuestion, withRemedy } = fit;
  const { NEAR_M, issue, limitsOver, loadsOf, numberOf, on, placed, REMEDY, spacingIssues } = fit.hangs;
  const GRAM_KG = 0.001;
  const NEAR_ENOUGH_M = 0.025;
  const HOUSE_DOWN = "Ask whether what the house itself hangs there can come down.";
  const HANG = {
    question: "Which points can this hang have, what may each carry, and what hangs there already?",
    remedy: "",
    who: "the show's and the house's head riggers, with the house's engineer",
  };
  const TRIM = {
    question: "How high does this hang go under your steel, with hoists run up?",
    remedy: "Fly lower, hang from a higher beam, or use shorter hoists, slings or truss.",
    who: "the show's head rigger",
  };

  function hangsForAll(requirements, pack) {
    const section = sectionOf(pack, "rigging");
    if (section === null) return requirements.map((each) => asked(each, each.sort === "hang" ? HANG : TRIM, "The pack does not describe rigging."));
    const places = placed(requirements.filter((each) => each.sort === "hang"), section);
    const sums = new Map(), loaded = [];
    let last = [];
    return requirements.map((requirement) => {
      if (requirement.sort !== "hang") return trimmed(requirement, last);
      last = places.shift();
      return hung(requirement, last, section, sums, loaded);
    });
  }

  function hung(hang, places, section, sums, loaded) {
    const items = places.filter((place) => place.item !== null).map((place) => place.item);
    loaded.push(...items.map((item) => item.key));
    const brought = loadsOf(hang, section);
    const issues = places.flatMap((place) => place.issues);
    for (const item of items) issues.push(...spacingIssues(item, loaded, section));
    const looks = limitsOf(places, section).map((each) => looked(each, brought, sums));
    issues.push(...brought.issues, ...looks.filter((each) => each.issue !== null).map((each) => each.issue));
    return told(hang, places, brought, issues, looks);
  }

  function limitsOf(places, section) {
    const found = [];
    places.forEach((place, index) => {
      for (const each of limitsOver(place.item, section)) {
        const known = found.find((other) => other.key === each.key);
        if (known === undefined) found.push({ ...each, supports: [index] });
        else known.supports.push(index);
      }
    });
    return found;
  }

  function looked(each, brought, sums) {
    const soFar = sums.get(each.key) || { low: 0, high: 0 };
    const low = soFar.low + on(brought.low, each.supports, brought.hoist_low, false);
    const high = soFar.high + on(brought.high, each.supports, brought.hoist_high, true);
    sums.set(each.key, { low, high });
    const left = each.left_kg, name = each.words, found = { limit: each, slack: null, issue: null };
    if (left === null) {
      const question = "What may " + name + " carry, and what hangs there already?";
      found.issue = { ...issue(ASK, "Nobody has said what is left on " + name + ".", { question }), fact: each.fact };
    } else if (low > left + GRAM_KG) {
      const least = high <= low + GRAM_KG ? "" : "at least ";
      const reason = leftWords(each) + ", and the show brings " + least + kg(low) + ": " + kg(low - left) + " too much.";
      found.issue = { ...issue(SHORT, reason, { remedy: REMEDY[each.kind] }), slack: left - low, fact: each.fact, house: each.house };
    } else if (high > left + GRAM_KG) {
      const reason = leftWords(each) + ". Hung level, the show brings " + kg(low) + "; with a support slack or the heaviest hoists, up to " + kg(high) + ".";
      const question = "May " + name + " take up to " + kg(high) + " while a support is slack, or how is that kept from happening?";
      found.issue = { ...issue(ASK, reason, { question }), fact: each.fact };
    } else found.slack = left - high;
    return found;
  }

  function kg(mass) {
    return both("mass", mass)[0];
  }

  function leftWords(each) {
    return (each.left_kg > 0 ? kg(each.left_kg) : "Nothing") + " left on " + each.words;
  }

  function told(hang, places, brought, issues, looks) {
    const word = issues.some((each) => each.word === SHORT) ? SHORT : issues.length > 0 ? ASK : FITS;
    if (word === FITS) return fitting(hang, places, brought, looks);
    const against = issues.filter((each) => each.word === word);
    const found = verdict(hang, word, once(against.map((each) => each.reason)).join(" "));
    let worst = against[0];
    for (const each of against) if (each.slack < worst.slack) worst = each;
    found.fact = worst.fact;
    if (word === SHORT) {
      const house = against.some((each) => each.house) ? [HOUSE_DOWN] : [];
      withRemedy(found, { ...HANG, remedy: [...once(against.map((each) => each.remedy)), ...house].join(" ") });
      found.margin = worst.slack < 0 ? signed(both("mass", -worst.slack), worst.slack) : ["", ""];
      found.notes = once(issues.filter((each) => each.word === ASK).map((each) => each.reason));
    } else {
      withQuestion(found, hang, once(against.map((each) => each.question)).join(" "));
      const shown = against.find((each) => each.fact !== null);
      found.fact = shown !== undefined ? shown.fact : null;
      found.notes = once(brought.notes);
    }
    return found;
  }

  function fitting(hang, places, brought, looks) {
    const known = looks.filter((each) => each.slack !== null);
    if (known.length === 0) return asked(hang, HANG, "The house has not said what any limit is.");
    let tightest = known[0];
    for (const each of known) if (each.slack < tightest.slack) tightest = each;
    const carried = places.map((place, index) => onPoint(place, index, brought)).join(", ");
    const limit = tightest.limit, hoists = brought.hoist_high > 0 ? ", hoists counted: " : ": ";
    const reason = "At the most" + hoists + carried + ". Tightest: " + limit.words + ", " + kg(tightest.slack) + " to spare beside all hangs so far.";
    const found = verdict(hang, FITS, reason);
    found.fact = limit.fact;
    found.margin = signed(both("mass", tightest.slack), tightest.slack);
    found.notes = once([...brought.notes, ...places.flatMap(placeNotes), ...ageNotes(limit.value)]);
    return settled(found);
  }

  function onPoint(place, index, brought) {
    return place.item.name + " " + kg(on(brought.high, [index], brought.hoist_high, true));
  }

  function placeNotes(place) {
    const notes = itemNotes(place.item);
    if (place.away_m > NEAR_ENOUGH_M) {
      const words = both("length", place.away_m)[0] + " from the spot, within the " + both("length", NEAR_M)[0] + " that this check allows";
      notes.push(place.item.name + " is " + words + "; the truss moves or the pick leans by that.");
    }
    return notes;
  }

  function trimmed(requirement, places) {
    let lowest = null;
    for (const place of places) {
      const steel = numberOf(place.item, "low-steel");
      if (steel === null) return asked(requirement, TRIM, "The low steel over all of its points is not known.");
      if (lowest === null || steel < numberOf(lowest, "low-steel")) lowest = place.item;
    }
    if (lowest === null) return asked(requirement, TRIM, "The hang has no points yet.");
    const room = numberOf(lowest, "low-steel") - requirement.trim_m, below = requirement.below_m;
    const slack = below === null ? room : room - below;
    const words = both("length", Math.abs(slack));
    let found;
    if (slack < -LENGTH_TOLERANCE_M) {
      found = withRemedy(verdict(requirement, SHORT, "Too high under the steel at " + lowest.name + " by " + words[0] + "."), TRIM);
    } else if (below === null) {
      const reason = words[0] + " between the steel at " + lowest.name + " and the trim. The rider does not say what hoists, slings and truss take of that.";
      found = asked(requirement, TRIM, reason);
    } else {
      found = verdict(requirement, FITS, words[0] + " to spare under the steel at " + lowest.name + ".");
      if (slack < 0) {
        found.reason = "Within the tolerance.";
        found.notes = ["Short by " + words[0] + ", within the tolerance for rounding."];
      }
    }
    found.margin = found.verdict !== ASK ? signed(words, slack) : ["", ""];
    found.fact = steelFact(lowest);
    return settled(found);
  }

  function steelFact(item) {
    const words = both("length", numberOf(item, "low-steel"));
    return { key: item.key + ".low-steel", item: item.name, label: "Low steel", text: words[0], standing: "stated", also: words[1], page: item.page, checked: item.checked };
  }

  Object.assign(fit, { hangsForAll });
})((window.housefit = window.housefit || {}));
