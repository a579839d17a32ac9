// Which point of the house carries each support of a hang plan. Twin of builder/fit/hangs/points.py.
(function (fit) {
  "use strict";
  const { ASK, SHORT, factOf, numberOf, valueOf, both } = fit;
  const NEAR_M = 0.25;
  const ROUNDING_M = 0.000001;
  const BRIDLE = "Can you make a bridle for this spot, how high may it meet, and what may hang from it?";

  function issue(word, reason, { question = "", remedy = "", item = null } = {}) {
    const value = item !== null ? valueOf(item, "limit") : null;
    return { word, reason, question, remedy, slack: 0, fact: value !== null ? factOf(value, item) : null, house: false, hangs: [] };
  }

  function pointsOf(section) {
    return section.items.filter((item) => item.kind === "point");
  }

  function placed(hangs, section, taken) {
    const found = hangs.map((hang) => hang.supports.map((support) => named(support, section)));
    taken.push(...found.flat().filter((place) => place.item !== null).map((place) => place.item.key));
    hangs.forEach((hang, each) => {
      hang.supports.forEach((support, index) => {
        if (support.across_m !== null) {
          found[each][index] = nearest(support, section, taken);
          if (found[each][index].item !== null) taken.push(found[each][index].item.key);
        }
      });
    });
    return found;
  }

  function atPoint(item, away) {
    return { item, away_m: away, issues: [], legs: [], apex_m: null };
  }

  function named(support, section) {
    const place = atPoint(null, 0);
    if (support.point === "") {
      if (support.across_m === null) place.issues.push(issue(ASK, "A support says neither a point nor a spot.", { question: "Which points can this hang have?" }));
      return place;
    }
    const item = pointsOf(section).find((each) => each.name.toLowerCase() === support.point.toLowerCase());
    if (item !== undefined) {
      place.item = item;
      place.issues = unusable(item, section);
      return place;
    }
    place.issues.push(issue(ASK, "The house names no point " + support.point + ".", { question: "Which of your points is meant by " + support.point + "?" }));
    return place;
  }

  function unusable(item, section) {
    const name = item.name, beam = beamOf(item, section);
    if (item.condition === "out of service") {
      const reason = name + " is out of service" + (item.note !== "" ? ": " + item.note : ".");
      return [issue(SHORT, reason, { remedy: "Take another point, or ask when this one is back in service.", item })];
    }
    if (item.terms === "not for visitors") return [issue(SHORT, name + " is not for visitors.", { remedy: "Take another point.", item })];
    if (beam !== null && beam.condition === "out of service") {
      const reason = "Beam " + beam.name + ", which " + name + " is on, is out of service.";
      return [issue(SHORT, reason, { remedy: "Take a point on another beam.", item: beam })];
    }
    if (numberOf(item, "limit") === null) return [issue(ASK, "Nobody has said what " + name + " may carry.", { question: "What may " + name + " carry?", item })];
    return [];
  }

  function beamOf(item, section) {
    return section.items.find((other) => other.kind === "beam" && other.name.toLowerCase() === fit.textOf(item, "beam").toLowerCase()) || null;
  }

  function awayOf(support, item) {
    const across = numberOf(item, "at.across"), depth = numberOf(item, "at.depth");
    if (across === null || depth === null) return null;
    const aside = across - support.across_m, along = depth - support.depth_m;
    return Math.sqrt(aside * aside + along * along);
  }

  function nearest(support, section, taken) {
    const near = pointsOf(section).map((item) => ({ item, away_m: awayOf(support, item) })).filter((each) => each.away_m !== null);
    near.sort((one, other) => one.away_m - other.away_m);
    const within = near.filter((each) => each.away_m <= NEAR_M + ROUNDING_M);
    for (const each of within) {
      if (!taken.includes(each.item.key) && unusable(each.item, section).length === 0) return atPoint(each.item, each.away_m);
    }
    const place = atPoint(null, 0);
    if (within.length > 0) {
      const first = within[0].item;
      if (taken.includes(first.key)) {
        const reason = "The nearest point, " + first.name + ", is taken by another support of this show.";
        place.issues = [issue(ASK, reason, { question: "Which other point can this spot have?", item: first })];
      } else place.issues = unusable(first, section).map((each) => orABridle(support, each, section));
      return place;
    }
    place.issues = [tooFar(support, near, section)];
    return place;
  }

  function spotWords(support) {
    const across = support.across_m, depth = support.depth_m;
    const first = across === 0 ? "centre" : both("length", Math.abs(across))[0] + (across > 0 ? " SL" : " SR");
    return first + ", " + both("length", Math.abs(depth))[0] + (depth === 0 ? "" : depth > 0 ? " US" : " DS");
  }

  function bridleAt(support) {
    return "Can you make a bridle at " + spotWords(support) + ", how high may it meet, and what may hang from it?";
  }

  function orABridle(support, found, section) {
    if (found.word !== SHORT || bridleRule(section) === "no") return found;
    return { ...found, word: ASK, reason: found.reason + " A bridle would be wanted" + allowedWords(section), question: bridleAt(support), remedy: "" };
  }

  function allowedWords(section) {
    const rule = bridleRule(section);
    return rule !== "" ? ", and the house allows them " + rule + "." : ", and the house has not said whether it allows them.";
  }

  function tooFar(support, near, section) {
    if (near.length === 0) return issue(ASK, "The house has not said where its points are.", { question: "Where are your points?" });
    const item = near[0].item;
    let words = "No point is within " + both("length", NEAR_M)[0] + " of the spot at " + spotWords(support) + "; the nearest, " + item.name + ", is ";
    words += both("length", near[0].away_m)[0] + " away. A bridle would be wanted";
    if (bridleRule(section) === "no") return issue(SHORT, words + ", and the house allows none.", { remedy: "Move the spot to a point.", item });
    return issue(ASK, words + allowedWords(section), { question: bridleAt(support), item });
  }

  function bridleRule(section) {
    for (const item of section.items) {
      const value = valueOf(item, "bridles_allowed");
      if (item.kind === "house" && value !== null && value.standing === "none") return "no";
      if (item.kind === "bridles_allowed") {
        const allowed = fit.textOf(item, "allowed");
        if (allowed === "between some beams") return "between beams " + fit.textOf(item, "beams") + " only";
        return allowed === "no" ? "no" : allowed === "yes" ? "on any beam" : "";
      }
    }
    return "";
  }

  fit.hangs = { ...fit.hangs, BRIDLE, NEAR_M, awayOf, beamOf, issue, numberOf, placed, pointsOf, unusable };
})((window.housefit = window.housefit || {}));
