// Load-in, set-up and checks against doors. Twin of builder/fit/clock/before_doors.py.
(function (fit) {
  "use strict";
  const { FITS, SHORT, ASK, verdict, factOf, settled, ageNotes, clock: clockWords, lasting, PRACTICE, READY, saidByHouse } = fit;
  const BEFORE_DOORS = ["set up", "line check", "check", "check from", "clear after check", "doors"];
  const COMMONLY = {
    "load in": "when is your first truck opened?",
    "set up": "how long from load-in until your check can begin? Commonly 2 to 8 h, by the size of the show" + PRACTICE,
    "set up behind": "how long do you set up, from a free deck until your check can begin? Commonly 15 to 30 min" + PRACTICE,
    check: "how long is your check, or 0 min for none? Commonly 60 to 90 min for who plays last, 30 to 45 min for others" + PRACTICE,
    "clear after check": "how long after your check until the next act can set up in front of you? Commonly 10 to 20 min" + PRACTICE,
  };

  function planOf(acts, section) {
    const doors = fit.doorsOf(acts), quiet = fit.quietOf(section, fit.dayOf(acts));
    const ready = saidByHouse(section, "identity", "checks_end_before_doors");
    const lacks = [...doors.asks, ...lacking(acts)];
    if (ready.standing === "ask") lacks.push(READY);
    if (acts.some(mayBeHeard)) lacks.push(...quiet.asks);
    const loadIns = acts.map((act) => act.clock["load in"]).filter((time) => time !== null);
    return {
      pieces: [...acts.keys()].reverse().flatMap((index) => piecesOf(acts[index], index > 0)),
      lacks,
      doorsS: doors.s,
      ready,
      meals: fit.mealsOf(section),
      quiet: quiet.hours,
      notes: quiet.notes,
      from: saidByHouse(section, "identity", "load_in_from"),
      kept: saidByHouse(section, "identity", "doors_before_show"),
      firstS: acts[0].startsS,
      startS: loadIns.length === acts.length ? Math.min(...loadIns) : null,
    };
  }

  function mayBeHeard(act) {
    return act.clock.check !== 0 || (act.clock["line check"] !== null && act.clock["line check"] > 0);
  }

  function lacking(acts) {
    const asks = [];
    for (let index = acts.length - 1; index >= 0; index -= 1) {
      const { act, clock } = acts[index];
      if (clock["load in"] === null) asks.push(act + ": " + COMMONLY["load in"]);
      if (clock["set up"] === null && clock["check from"] === null) asks.push(act + ": " + COMMONLY[index === acts.length - 1 ? "set up" : "set up behind"]);
      if (clock.check === null) asks.push(act + ": " + COMMONLY.check);
      if (clock["clear after check"] === null && index > 0) asks.push(act + ": " + COMMONLY["clear after check"]);
    }
    return asks;
  }

  function piecesOf(act, followed) {
    const clock = act.clock, agreed = fit.workTime(act, "check from"), line = clock["line check"];
    const blank = { whose: act.act, notBeforeS: null, untilS: null, atS: null, splits: true };
    const pieces = [{ ...blank, what: "set-up", lengthS: clock["set up"], notBeforeS: clock["load in"], untilS: agreed }];
    if (line !== null) pieces.push({ ...blank, what: "line check", lengthS: line, atS: agreed, splits: false });
    pieces.push({ ...blank, what: "check", lengthS: clock.check, atS: line !== null ? null : agreed, splits: false });
    if (followed) pieces.push({ ...blank, what: "clearing the deck", lengthS: clock["clear after check"] });
    return pieces;
  }

  function run(plan) {
    if (plan.startS === null || plan.doorsS === null) return { rows: [], late: [], lacks: [...plan.lacks, ...plan.meals.asks], nowS: null };
    const state = fit.laidOut(plan.pieces, plan.startS, plan.meals, plan.quiet);
    const lacks = [...plan.lacks];
    for (const piece of state.open) lacks.push(piece.whose + ": " + COMMONLY["set up"] + " A meal break is due before your check.");
    const span = state.nowS - plan.startS;
    if (plan.meals.asks.length > 0 && (plan.meals.dueS === null || span > plan.meals.dueS || lacks.length > 0)) lacks.push(...plan.meals.asks);
    const before = plan.ready.s !== null ? plan.ready.s : 0;
    const last = { lateS: state.nowS + before - plan.doorsS, atS: plan.doorsS - before, what: "", whose: "" };
    return { ...state, late: [...state.pins, last], lacks };
  }

  function beforeDoors(requirement, plan, laid) {
    const found = laid.late.length > 0 ? againstDoors(requirement, plan, laid) : verdict(requirement, ASK, "");
    if (found.verdict === ASK) found.reason = "Not all that decides is known.";
    if (laid.lacks.length > 0) found.question = laid.lacks.join(" ") + " (" + requirement.title + ".)";
    if (plan.ready.item !== null) found.fact = factOf(plan.ready.value, plan.ready.item);
    return settled(found);
  }

  function againstDoors(requirement, plan, laid) {
    let worst = laid.late[0];
    for (const other of laid.late) if (other.lateS > worst.lateS) worst = other;
    if (worst.lateS <= 0 && laid.lacks.length > 0) return verdict(requirement, ASK, "");
    const words = lasting(worst.lateS);
    if (worst.lateS > 0) {
      const least = laid.lacks.length > 0 ? "at least " : "";
      const found = verdict(requirement, SHORT, where(worst, plan) + " " + least + words + " late. " + sumOf(laid));
      found.margin = ["−" + words, ""];
      return mended(found, plan, worst.lateS, laid.lacks.length > 0 ? "As far as is known, any" : "Any");
    }
    const found = verdict(requirement, FITS, spared(laid, plan) + " " + sumOf(laid));
    found.margin = [worst.lateS < 0 ? "+" + words : words, ""];
    found.notes = [...plan.notes, ...plan.meals.notes, ...ageNotes(plan.ready.value)];
    return found;
  }

  function where(late, plan) {
    if (late.what !== "") return "It does not close at the " + late.what + " of " + late.whose + ", agreed for " + clockWords(late.atS) + ": it can begin";
    if (plan.ready.s === null || plan.ready.s === 0) return "It does not close at doors, " + clockWords(plan.doorsS) + ": the last check ends";
    const kept = ", " + lasting(plan.ready.s) + " before doors at " + clockWords(plan.doorsS);
    return "It does not close at " + clockWords(late.atS) + kept + ": the last check ends";
  }

  function spared(laid, plan) {
    const parts = laid.late.map((late) => {
      const at = late.what !== "" ? "the " + late.what + " of " + late.whose + " at" : "the checks must have ended at";
      return (late.lateS < 0 ? lasting(late.lateS) : "nothing") + " before " + at + " " + clockWords(late.atS);
    });
    return "To spare: " + parts.join(", ") + " (doors " + clockWords(plan.doorsS) + ").";
  }

  function sumOf(laid) {
    let words = "", whose = "";
    for (const each of laid.rows) {
      const length = each.lengthS !== null ? lasting(each.lengthS) : "not stated";
      const before = each.whose === whose ? ", " : (words === "" ? "" : "; ") + each.whose + ": ";
      words += before + each.what + " " + length;
      whose = each.whose;
    }
    return words + ".";
  }

  function mended(found, plan, late, anyOf) {
    const ways = [...earlier(plan, late), ...shorter(plan, late), ...later(plan, late)];
    if (ways.length === 0) {
      found.remedy = "No single change closes it: load in the day before, or leave out a check.";
      found.who = "the show and the promoter";
      return found;
    }
    found.remedy = anyOf + " of these closes it: " + ways.map(([words]) => words).join("; ") + ".";
    found.who = [...new Set(ways.map(([, who]) => who))].sort().join(" or ");
    return found;
  }

  function closes(plan) {
    return run(plan).late.every((late) => late.lateS <= 0);
  }

  function earlier(plan, late) {
    const startS = plan.startS - late;
    if (startS < 0 || (plan.from.s !== null && startS < plan.from.s)) return [];
    const pieces = plan.pieces.map((piece) => (piece.notBeforeS === plan.startS ? { ...piece, notBeforeS: startS } : piece));
    if (!closes({ ...plan, startS, pieces })) return [];
    return [["load in at " + clockWords(startS) + (plan.from.standing === "ask" ? " if the house allows it" : ""), "the show"]];
  }

  function shorter(plan, late) {
    for (const piece of [...plan.pieces].reverse()) {
      if (piece.what === "check" && piece.lengthS !== null && piece.lengthS >= late) {
        const left = piece.lengthS - late;
        if (closes({ ...plan, pieces: plan.pieces.map((each) => (each === piece ? { ...each, lengthS: left } : each)) })) {
          return [[(left > 0 ? "shorten" : "leave out") + " the check of " + piece.whose + (left > 0 ? " to " + lasting(left) : ""), "the show"]];
        }
      }
    }
    return [];
  }

  function later(plan, late) {
    const doorsS = plan.doorsS + late, kept = plan.kept.s !== null ? plan.kept.s : 0;
    if (plan.firstS === null || doorsS + kept > plan.firstS || !closes({ ...plan, doorsS })) return [];
    return [["open doors at " + clockWords(doorsS), "the promoter and the house"]];
  }

  Object.assign(fit, { BEFORE_DOORS, planOf, run, beforeDoors });
})((window.housefit = window.housefit || {}));
