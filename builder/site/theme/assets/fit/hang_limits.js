// The limits above a point, each with what the house's own hangs leave. Twin of builder/fit/hangs/limits.py.
(function (fit) {
  "use strict";
  const { ASK, SHORT, factOf, valueOf, textOf, partsOf, listed, both, once } = fit;
  const { beamOf, issue, numberOf, pointsOf } = fit.hangs;
  const REMEDY = {
    point: "Move the support to another point, spread it over two, or hang less there.",
    beam: "Move the hang or a part of it to another beam, or hang less there.",
    zone: "Move the hang or a part of it to another part of the roof, or hang less there.",
    roof: "Fly less, or stand it on the floor.",
  };
  const SPACING_ROUNDING_M = 0.000000001;

  function limitsOver(item, section) {
    const found = [];
    if (item !== null) {
      const most = numberOf(item, "limit"), carried = numberOf(item, "carried");
      if (most !== null) found.push({ ...limit("point", "point " + item.name, item, "limit", carried === null ? null : most - carried), hangs: hangsOn([item]) });
      const beam = beamOf(item, section);
      const others = pointsOf(section).filter((other) => textOf(other, "beam").toLowerCase() === textOf(item, "beam").toLowerCase());
      found.push({ ...limit("beam", "beam " + textOf(item, "beam"), beam, "left", numberOf(beam, "left")), hangs: hangsOn(others) });
      for (const zone of section.items) {
        if (zone.kind === "zone" && (listed(item.name, partsOf(zone, "points")) || listed(textOf(item, "beam"), partsOf(zone, "beams")))) {
          found.push(limit("zone", "the zone " + zone.name, zone, "left", numberOf(zone, "left")));
        }
      }
    }
    const roof = roofOf(section);
    found.push(limit("roof", "the whole roof", roof, "left", numberOf(roof, "left")));
    return found.filter((each) => each.left_kg !== null || !withoutLimit(each.kind, each.item));
  }

  function roofOf(section) {
    return section.items.find((item) => item.kind === "roof") || null;
  }

  function limit(kind, words, item, shown, left) {
    const carried = numberOf(item, "carried");
    const value = item !== null ? valueOf(item, shown) : null;
    return {
      key: kind + " " + (item !== null ? item.key : words), kind, words, item, value,
      fact: value !== null ? factOf(value, item) : null, left_kg: left, house: carried !== null && carried > 0, hangs: [],
    };
  }

  function hangsOn(points) {
    return once(points.filter((item) => Object.hasOwn(item.words, "carried")).map((item) => item.words.carried));
  }

  function withoutLimit(kind, item) {
    const value = item !== null ? valueOf(item, "limit") : null;
    return kind !== "point" && value !== null && value.standing === "none";
  }

  function spacingIssues(item, loaded, section) {
    const roof = roofOf(section);
    const rule = roof !== null ? valueOf(roof, "spacing_at_least") : null;
    if (rule === null || ["none", "not stated"].includes(rule.standing)) return [];
    const found = [];
    let after = false;
    for (const other of pointsOf(section)) {
      if (other.key === item.key) after = true;
      else if (textOf(other, "beam").toLowerCase() === textOf(item, "beam").toLowerCase()) {
        const carried = numberOf(other, "carried"), show = loaded.includes(other.key);
        if (show || carried === null || carried > 0) found.push(...neighbour(after ? [item, other] : [other, item], rule, item, show || carried !== null));
      }
    }
    return found;
  }

  function apartOf(pair) {
    const numbers = pair.flatMap((each) => ["at.across", "at.depth"].map((name) => numberOf(each, name)));
    if (numbers.includes(null)) return null;
    return Math.max(Math.abs(numbers[0] - numbers[2]), Math.abs(numbers[1] - numbers[3]));
  }

  function neighbour(pair, rule, item, known) {
    const names = pair[0].name + " and " + pair[1].name, apart = apartOf(pair);
    const question = "How near may two loaded points be to each other on one beam? (" + names + ")";
    if (rule.number === null || apart === null) return [issue(ASK, "Nobody has said how near to each other " + names + " may both be loaded.", { question, item })];
    if (apart >= rule.number - SPACING_ROUNDING_M) return [];
    const reason = names + " are " + both("length", apart)[0] + " apart on one beam; the house keeps " + both("length", rule.number)[0] + " between loaded points";
    if (known) return [issue(SHORT, reason + ".", { remedy: "Take a point that is farther from a loaded one.", item })];
    return [issue(ASK, reason + ", and it is not known whether both are.", { question, item })];
  }

  fit.hangs = { ...fit.hangs, REMEDY, limitsOver, spacingIssues };
})((window.housefit = window.housefit || {}));
