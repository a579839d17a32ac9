// The hang plan: all hangs of all acts against points, beams, zones and roof, the house's own hangs staying up. Twin of builder/fit/hangs/plan.py.
(function (fit) {
  "use strict";
  const { ASK, FITS, SHORT, LENGTH_TOLERANCE_M, ageNotes, asked, both, itemNotes, once, sectionOf, settled, signed, verdict, withQuestion, withRemedy } = fit;
  const { BRIDLE, NEAR_M, hoistIssues, issue, limitsOver, loadsOf, numberOf, on, placed, REMEDY, spacingIssues, withBridles } = fit.hangs;
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
    const hangs = requirements.filter((each) => each.sort === "hang"), taken = [];
    const places = placed(hangs, section, taken);
    withBridles(hangs, places, section, taken);
    const sums = new Map(), loaded = [];
    let last = [];
    return requirements.map((requirement) => {
      if (requirement.sort !== "hang") return trimmed(requirement, last);
      last = places.shift();
      return hung(requirement, last, section, sums, loaded);
    });
  }

  function hung(hang, places, section, sums, loaded) {
    const items = places.flatMap(itemsOf);
    loaded.push(...items.map((item) => item.key));
    const brought = loadsOf(hang, section);
    const issues = places.flatMap((place) => place.issues);
    for (const item of items) {
      const bridled = places.some((place) => place.legs.some((leg) => leg.item.key === item.key));
      issues.push(...spacingIssues(item, loaded, section).map((each) => (bridled ? anotherBridle(each) : each)));
    }
    places.forEach((place, index) => issues.push(...pullIssues(place, index, brought)));
    const looks = limitsOf(places, section).map((each) => looked(each, brought, sums));
    issues.push(...brought.issues, ...hoistIssues(hang, brought, sums, section), ...looks.filter((each) => each.issue !== null).map((each) => each.issue));
    return told(hang, places, brought, issues, looks);
  }

  function itemsOf(place) {
    return place.item === null ? place.legs.map((leg) => leg.item) : [place.item];
  }

  function anotherBridle(found) {
    if (found.word !== SHORT) return found;
    return { ...found, word: ASK, reason: "With this bridle: " + found.reason, question: BRIDLE, remedy: "", slack: 0 };
  }

  function pullIssues(place, index, brought) {
    const found = [];
    for (const leg of place.legs) {
      const pull = leg.pull * on(brought.high, [[index, 1]], brought.hoist_high, true), most = numberOf(leg.item, "limit"), name = leg.item.name;
      if (pull > most + GRAM_KG) {
        const reason = "The leg to " + name + " would pull " + kg(pull) + ", and " + name + " may carry " + kg(most) + ".";
        found.push(anotherBridle(issue(SHORT, reason, { item: leg.item })));
      }
    }
    return found;
  }

  function limitsOf(places, section) {
    const found = [];
    places.forEach((place, index) => {
      const ends = place.legs.length === 0 ? [[place.item, 1]] : place.legs.map((leg) => [leg.item, leg.share]);
      for (const [item, share] of ends) {
        for (const each of limitsOver(item, section)) {
          const bridled = place.legs.length > 0 && each.kind !== "roof", known = found.find((other) => other.key === each.key);
          if (known === undefined) found.push({ ...each, shares: [[index, share]], bridled });
          else {
            known.shares.push([index, share]);
            known.bridled = known.bridled || bridled;
          }
        }
      }
    });
    return found;
  }

  function looked(each, brought, sums) {
    const soFar = sums.get(each.key) || { low: 0, high: 0, bridled: false }, bridled = soFar.bridled || each.bridled;
    const low = soFar.low + on(brought.low, each.shares, brought.hoist_low, false);
    const high = soFar.high + on(brought.high, each.shares, brought.hoist_high, true);
    sums.set(each.key, { low, high, bridled });
    const left = each.left_kg, name = each.words, found = { limit: each, slack: null, issue: null };
    if (left === null) {
      const question = "What may " + name + " carry, and what hangs there already?";
      found.issue = { ...issue(ASK, "Nobody has said what is left on " + name + ".", { question }), fact: each.fact };
    } else if (low > left + GRAM_KG) {
      const least = high <= low + GRAM_KG ? "" : "at least ";
      const reason = leftWords(each) + ", and the show's hangs so far bring " + least + kg(low) + ": " + kg(low - left) + " too much.";
      found.issue = { ...issue(SHORT, reason, { remedy: REMEDY[each.kind] }), slack: left - low, fact: each.fact, house: each.house, hangs: each.hangs };
    } else if (high > left + GRAM_KG) {
      const reason = leftWords(each) + ". Hung level, the show's hangs so far bring " + kg(low) + "; with a support slack or the heaviest hoists, up to " + kg(high) + ".";
      const question = "May " + name + " take up to " + kg(high) + " while a support is slack, or how is that kept from happening?";
      found.issue = { ...issue(ASK, reason, { question }), fact: each.fact };
    } else found.slack = left - high;
    if (found.issue !== null && bridled) found.issue = anotherBridle(found.issue);
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
      withRemedy(found, { ...HANG, remedy: [...once(against.map((each) => each.remedy)), ...takenDown(against)].join(" ") });
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

  function takenDown(against) {
    const names = once(against.flatMap((each) => each.hangs));
    if (names.length > 0) return ["Ask whether the house can take down what hangs there: " + names.join(", ") + "."];
    return against.some((each) => each.house) ? [HOUSE_DOWN] : [];
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
    found.notes = once([...brought.notes, ...places.flatMap((place, index) => placeNotes(place, index, brought)), ...ageNotes(limit.value)]);
    return settled(found);
  }

  function onPoint(place, index, brought) {
    const most = on(brought.high, [[index, 1]], brought.hoist_high, true);
    return place.item !== null ? place.item.name + " " + kg(most) : place.legs.map((leg) => leg.item.name + " " + kg(most * leg.share)).join(" with ");
  }

  function placeNotes(place, index, brought) {
    const notes = itemsOf(place).flatMap(itemNotes);
    if (place.away_m > NEAR_ENOUGH_M) {
      const words = both("length", place.away_m)[0] + " from the spot, within the " + both("length", NEAR_M)[0] + " that this check allows";
      notes.push(place.item.name + " is " + words + "; the truss moves or the pick leans by that.");
    }
    if (place.legs.length > 0) {
      const most = on(brought.high, [[index, 1]], brought.hoist_high, true);
      const pulls = place.legs.map((leg) => kg(most * leg.pull) + " in the leg to " + leg.item.name).join(" and ");
      notes.push("A bridle that meets at " + both("length", place.apex_m)[0] + ": at the most " + pulls + ". The house's rigger decides on it.");
    }
    return notes;
  }

  function topOf(place) {
    return place.legs.length > 0 ? place.apex_m : numberOf(place.item, "low-steel");
  }

  function trimmed(requirement, places) {
    let lowest = null;
    for (const place of places) {
      const height = topOf(place);
      if (height === null) return asked(requirement, TRIM, "The low steel over all of its points is not known.");
      if (lowest === null || height < topOf(lowest)) lowest = place;
    }
    if (lowest === null) return asked(requirement, TRIM, "The hang has no points yet.");
    const item = itemsOf(lowest)[0], under = lowest.legs.length === 0 ? "the steel at " + item.name : "the bridle to " + item.name;
    const room = topOf(lowest) - requirement.trim_m, below = requirement.below_m;
    const slack = below === null ? room : room - below;
    const words = both("length", Math.abs(slack));
    let found;
    if (slack < -LENGTH_TOLERANCE_M) {
      found = withRemedy(verdict(requirement, SHORT, "Too high under " + under + " by " + words[0] + "."), TRIM);
    } else if (below === null) {
      const reason = words[0] + " between " + under + " and the trim. The rider does not say what hoists, slings and truss take of that.";
      found = asked(requirement, TRIM, reason);
    } else {
      found = verdict(requirement, FITS, words[0] + " to spare under " + under + ".");
      if (slack < 0) {
        found.reason = "Within the tolerance.";
        found.notes = ["Short by " + words[0] + ", within the tolerance for rounding."];
      }
    }
    found.margin = found.verdict !== ASK ? signed(words, slack) : ["", ""];
    found.fact = steelFact(item);
    return settled(found);
  }

  function steelFact(item) {
    const words = both("length", numberOf(item, "low-steel"));
    return { key: item.key + ".low-steel", item: item.name, label: "Low steel", text: words[0], standing: "stated", also: words[1], page: item.page, checked: item.checked };
  }

  Object.assign(fit, { hangsForAll });
})((window.housefit = window.housefit || {}));
