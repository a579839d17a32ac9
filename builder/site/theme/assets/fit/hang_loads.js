// What a hang brings to its supports, at the least and at the most. Twin of builder/fit/hangs/loads.py.
(function (fit) {
  "use strict";
  const { ASK, both, digits } = fit;
  const { casesOf, issue, numberOf } = fit.hangs;

  function loadsOf(hang, section) {
    const factor = factorOf(section), stated = hang.supports.map((support) => support.load_kg), issues = [];
    let cases = [stated];
    if (stated[0] === null) {
      const found = casesOf(hang.loads, hang.supports.map((support) => support.at_m));
      cases = found.cases;
      if (cases.length === 0) {
        issues.push(issue(ASK, "What each support carries cannot be told: " + found.why + ".", { question: "Can this hang be carried by these points, and what comes on each?" }));
      }
    }
    const [low, high] = cases.length > 0 ? [cases.slice(0, 1), cases] : [anywhere(hang), anywhere(hang)];
    const hoists = hoistsOf(hang, section), times = (each) => each.map((kg) => kg * factor);
    return {
      low: low.map(times), high: high.map(times), factor, hoist_low: hoists.low * factor, hoist_high: hoists.high * factor,
      issues: [...issues, ...hoists.issues], notes: [...hoists.notes, ...factorNotes(factor)],
    };
  }

  function factorOf(section) {
    const item = section.items.find((each) => each.kind === "dynamic_factor" && numberOf(each, "factor") !== null);
    return item !== undefined ? numberOf(item, "factor") : 1;
  }

  function factorNotes(factor) {
    return factor === 1 ? [] : ["All loads are counted times " + digits(factor, 2) + ", the house's own factor for starting and stopping."];
  }

  function anywhere(hang) {
    let total = 0;
    for (const load of hang.loads) total += load.kg;
    return hang.supports.map((_, one) => hang.supports.map((__, each) => (each === one ? total : 0)));
  }

  function hoistsOf(hang, section) {
    const blank = { low: 0, high: 0, issues: [], notes: [] };
    if (hang.hoists === "show") return { ...blank, low: hang.hoist_kg, high: hang.hoist_kg };
    if (["counted", "none"].includes(hang.hoists)) return blank;
    const weights = houseHoists(section);
    if (hang.hoists === "house") {
      if (weights.length === 0) {
        const reason = "The rider hangs it from the house's hoists, and the house has not said what they weigh.";
        return { ...blank, issues: [issue(ASK, reason, { question: "What do your hoists weigh with their chain?" })] };
      }
      const words = "The house's hoists are counted with their chain, " + between(weights) + " on each support.";
      return { ...blank, low: weights[0], high: weights[weights.length - 1], notes: [words] };
    }
    if (weights.length === 0) return { ...blank, notes: ["Hoists are not counted: the rider does not say who brings them, or what they weigh."] };
    const heaviest = weights[weights.length - 1];
    const words = "The rider does not say who brings hoists. At the most, the house's heaviest is counted: " + both("mass", heaviest)[0] + " on each support.";
    return { ...blank, high: heaviest, notes: [words] };
  }

  function houseHoists(section) {
    const found = section.items.filter((item) => item.kind === "hoist" && item.condition !== "out of service").map((item) => numberOf(item, "weight"));
    return found.filter((weight) => weight !== null).sort((one, other) => one - other);
  }

  function between(weights) {
    const lightest = both("mass", weights[0])[0], heaviest = both("mass", weights[weights.length - 1])[0];
    return lightest === heaviest ? lightest : lightest + " to " + heaviest;
  }

  // The least or the most of some supports together over the cases, hoists counted. A share is a support's number and how much of it.
  function on(cases, shares, hoist, most) {
    let found = null;
    for (const each of cases) {
      let total = 0;
      for (const [index, part] of shares) total += (each[index] + hoist) * part;
      if (found === null || (most ? total > found : total < found)) found = total;
    }
    return found === null ? 0 : found;
  }

  fit.hangs = { ...fit.hangs, loadsOf, on };
})((window.housefit = window.housefit || {}));
