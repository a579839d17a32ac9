// The day from load-in to the last truck. Twin of builder/fit/clock/day.py.
(function (fit) {
  "use strict";
  const { says, askedFor, clock: clockWords, PRACTICE } = fit;
  const THE_DAY = "The day";
  const EVENING = ["on stage", "set", "ends", "changeover", "strike"];

  function theDay(riders, pack) {
    const acts = fit.actsOf(riders), section = fit.sectionOf(pack, "house"), known = fit.inOrder(acts);
    const early = acts.some((act) => says(act, fit.BEFORE_DOORS));
    const late = acts.length > 1 && acts.some((act) => says(act, EVENING) || act.clock.parts !== null);
    if (known.length === 0 && (early || late)) return { verdicts: [orderAsked(acts)], rows: [] };
    const verdicts = [];
    let before = [];
    if (early) {
      const plan = fit.planOf(known, section), laid = fit.run(plan);
      before = laid.rows;
      verdicts.push(fit.beforeDoors(requirementOf(known, "Load-in and checks before doors", spanWords(known)), plan, laid));
    }
    verdicts.push(...evening(known, section, late));
    const told = early || late || acts.some((act) => says(act, ["on stage", "set", "load out"]));
    return { verdicts, rows: told && known.length > 0 ? fit.table(known, before, section) : [] };
  }

  function requirementOf(acts, title, need) {
    const alone = acts.length === 1;
    return { act: alone ? acts[0].act : THE_DAY, line: alone ? acts[0].clock.line : 0, department: "clock", title, need, strictness: "must" };
  }

  function spanWords(acts) {
    const times = acts.map((act) => act.clock["load in"]).filter((time) => time !== null), doors = fit.doorsOf(acts).s;
    return "load-in " + (times.length === acts.length ? clockWords(Math.min(...times)) : "not stated") + ", doors " + (doors !== null ? clockWords(doors) : "not stated");
  }

  function orderAsked(acts) {
    const silent = acts.filter((act) => act.startsS === null).map((act) => act.act);
    const requirement = requirementOf(acts, "Order of the acts", "who plays after whom");
    if (silent.length === 0) return askedFor(requirement, ["Which act plays first? Two begin at the same time."], "Two acts begin at the same time.");
    const asks = silent.map((name) => name + ": when are you on stage, and how long is your set?");
    return askedFor(requirement, asks, "Nobody has said when " + silent.join(", ") + (silent.length === 1 ? " is" : " are") + " on stage.");
  }

  function evening(acts, section, several) {
    const found = [], doors = fit.doorsOf(acts).s;
    if (doors !== null && acts.length > 0 && acts[0].startsS !== null) {
      found.push(fit.afterDoors(requirementOf(acts, "From doors to the first act", "first note at " + clockWords(acts[0].startsS)), acts[0], doors, section));
    }
    acts.forEach((act, index) => {
      const clock = act.clock;
      const own = { ...requirementOf(acts, "Set of " + act.act, "as long as stated"), act: act.act, line: clock.line };
      if (clock["on stage"] !== null && clock.set !== null && clock.ends !== null) found.push(fit.setCloses(own, act));
      else if (act.endsS === null && says(act, ["on stage", "set"])) found.push(endAsked({ ...own, title: "End of " + act.act }, act));
      if (several && index > 0) found.push(fit.changeover(requirementOf(acts, "Changeover to " + act.act, "in time"), acts[index - 1], act));
    });
    return [...found, ...afterTheShow(acts, section)];
  }

  function endAsked(requirement, act) {
    if (act.clock.set === null) {
      const ask = act.act + ": how long is your set? Commonly 30 to 45 min for who opens, 75 to 120 min for who plays last" + PRACTICE;
      return askedFor(requirement, [ask], "Nobody has said how long the set is.");
    }
    return askedFor(requirement, [act.act + ": when are you on stage?"], "Nobody has said when the set begins.");
  }

  function afterTheShow(acts, section) {
    const last = acts[acts.length - 1];
    if (acts.length === 0 || !acts.some((act) => says(act, ["load out"])) || last.endsS === null) return [];
    const found = [fit.loadOut(requirementOf(acts, "Load-out of " + last.act, "after the last note"), last, section)];
    const times = acts.map((act) => act.clock["load in"]).filter((time) => time !== null);
    if (times.length === acts.length && last.clock["load out"] !== null) {
      const requirement = { ...requirementOf(acts, "The crew's day", "from the first truck to the last"), strictness: "should" };
      found.push(fit.crewDay(requirement, Math.min(...times), last, section));
    }
    return found;
  }

  Object.assign(fit, { theDay });
})((window.housefit = window.housefit || {}));
