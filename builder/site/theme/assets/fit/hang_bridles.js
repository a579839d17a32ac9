// A bridle of two legs for a spot that no point is near to, by the house's rules. Twin of builder/fit/hangs/bridles.py.
(function (fit) {
  "use strict";
  const { listed, partsOf, textOf } = fit;
  const { NEAR_M, awayOf, numberOf, pointsOf, unusable } = fit.hangs;
  const IN_LINE_M = 0.05;
  const REACH_M = 12;
  const FLATTEST = -0.5;
  const STEEPEST_LEAN = 0.5;
  const ROUNDING = 0.000000001;

  function withBridles(hangs, places, section, taken) {
    hangs.forEach((hang, each) => {
      hang.supports.forEach((support, index) => {
        if (places[each][index].item === null && support.apex_m !== null && support.across_m !== null) {
          const legs = bridle(support, section, taken);
          if (legs.length > 0) {
            places[each][index] = { item: null, away_m: 0, issues: [], legs, apex_m: support.apex_m };
            taken.push(...legs.map((leg) => leg.item.key));
          }
        }
      });
    });
  }

  function bridle(support, section, taken) {
    const free = pointsOf(section).filter((item) => !taken.includes(item.key));
    const ends = free.map((item) => endOf(support, item, section)).filter((end) => end !== null);
    const widest = widestCosine(section);
    let best = [];
    for (let first = 0; first < ends.length; first += 1) {
      for (let second = first + 1; second < ends.length; second += 1) {
        const legs = legsOf(ends[first], ends[second], widest);
        if (legs.length > 0 && (best.length === 0 || hardest(legs) < hardest(best) - ROUNDING)) best = legs;
      }
    }
    return best;
  }

  function hardest(legs) {
    return Math.max(legs[0].pull, legs[1].pull);
  }

  function endOf(support, item, section) {
    const run = awayOf(support, item), steel = numberOf(item, "low-steel"), lean = leanCosine(item, section), carried = numberOf(item, "carried");
    if (unusable(item, section).length > 0 || carried === null || carried > 0 || !allowed(item, section)) return null;
    if (run === null || run <= NEAR_M || run > REACH_M || steel === null || steel <= support.apex_m || lean === null) return null;
    const rise = steel - support.apex_m, length = Math.sqrt(run * run + rise * rise);
    return rise / length >= lean - ROUNDING ? { item, run, rise, length } : null;
  }

  function ruleOf(section) {
    return section.items.find((item) => item.kind === "bridles_allowed") || null;
  }

  function allowed(item, section) {
    const rule = ruleOf(section);
    if (rule === null) return false;
    const said = textOf(rule, "allowed");
    return said === "yes" || (said === "between some beams" && listed(textOf(item, "beam"), partsOf(rule, "beams")));
  }

  function widestCosine(section) {
    const cosine = numberOf(ruleOf(section), "widest_angle");
    return cosine !== null && cosine > FLATTEST ? cosine : FLATTEST;
  }

  function leanCosine(item, section) {
    const exceptions = section.items.filter((rule) => rule.kind === "exception");
    const rules = [
      item,
      ...exceptions.filter((rule) => listed(item.name, partsOf(rule, "points"))),
      ...exceptions.filter((rule) => listed(textOf(item, "beam"), partsOf(rule, "beams"))),
      ...section.items.filter((rule) => rule.kind === "roof"),
    ];
    for (const rule of rules) {
      if (Object.hasOwn(rule.words, "directions")) {
        const lean = textOf(rule, "directions") === "at an angle" ? numberOf(rule, "widest_lean") : null;
        return lean === null ? null : Math.max(lean, STEEPEST_LEAN);
      }
    }
    return null;
  }

  function legsOf(first, second, widest) {
    const aside = numberOf(first.item, "at.across") - numberOf(second.item, "at.across");
    const along = numberOf(first.item, "at.depth") - numberOf(second.item, "at.depth");
    const apart = Math.sqrt(aside * aside + along * along);
    if (apart <= 0 || first.run + second.run - apart > IN_LINE_M) return [];
    const cosine = (first.rise * second.rise - first.run * second.run) / (first.length * second.length);
    if (cosine < widest - ROUNDING) return [];
    const turn = first.rise * second.run + second.rise * first.run;
    return [legOf(first, second.run / turn), legOf(second, first.run / turn)];
  }

  function legOf(end, each) {
    return { item: end.item, share: end.rise * each, pull: end.length * each };
  }

  fit.hangs = { ...fit.hangs, withBridles };
})((window.housefit = window.housefit || {}));
