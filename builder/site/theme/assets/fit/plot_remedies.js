// What would mend a rectangle of a stage plot that is short. Twin of builder/fit/plots/remedies.py.
(function (fit) {
  "use strict";
  const { SHORT, ASK, both } = fit;
  const plan = fit.plan;
  const { beyond, cornersOf, extent, ofWord } = plan;
  const MOST_TRIED = 8;
  const FIXED = ["load", "mass", "height"];
  const ENGINEER = "the house's engineer";
  const SHOW = "the show";

  function remedyOf(wish, rect, others, ground, hits) {
    const fixed = ofWord(hits, SHORT).filter((each) => FIXED.includes(each.sort));
    const lighter = fixed.map((each) => lessened(wish, each)).join(" ");
    const who = fixed.some((each) => each.sort !== "height") ? ENGINEER : SHOW;
    const size = (move) => Math.abs(move[0]) + Math.abs(move[1]);
    const tries = moves(wish, rect, ground, hits).sort((one, other) => size(one) - size(other));
    for (const allowed of fixed.length > 0 ? [[], FIXED] : [[]]) {
      const more = allowed.length > 0 ? " " + lighter : "";
      for (const move of tries) {
        if (mends(wish, plan.moved(rect, move[0], move[1]), others, ground, allowed)) return ["Move it " + moveWords(move) + "." + more, SHOW];
      }
      if (mends(wish, plan.quarterTurned(rect), others, ground, allowed) && !mends(wish, rect, others, ground, allowed)) return ["Turn it by a quarter." + more, SHOW];
      if (fixed.length > 0 && mends(wish, rect, others, ground, FIXED)) return [lighter, who];
    }
    return [elsewhere(rect, wish, ground) + smaller(rect, wish, ground), SHOW];
  }

  function mends(wish, rect, others, ground, allowed) {
    if (others.some((other) => plan.overlap(rect, other.rect))) return false;
    const hits = plan.hitsOf(wish, rect, others, ground);
    return ofWord(hits, SHORT).every((each) => allowed.includes(each.sort)) && ofWord(hits, ASK).every((each) => each.sort !== "edge");
  }

  function moves(wish, rect, ground, hits) {
    const one = extent(cornersOf(rect));
    const found = ground.floors.filter((floor) => floor.on === (wish.on !== "" ? wish.on : "deck")).flatMap((floor) => backWithin(rect, one, floor.corners));
    for (const { box } of ofWord(hits, SHORT).slice(0, MOST_TRIED)) {
      if (box !== null) found.push([box[1] - one[0], 0], [box[0] - one[1], 0], [0, box[3] - one[2]], [0, box[2] - one[3]]);
    }
    return found.filter((each) => each[0] !== 0 || each[1] !== 0);
  }

  function backWithin(rect, one, corners) {
    const found = beyond(rect, corners).map(({ side, over_m: over }) => ({ "stage left": [-over, 0], "stage right": [over, 0], upstage: [0, -over], downstage: [0, over] })[side]);
    const box = extent(corners);
    return [...found, [within(one[0], one[1], box[0], box[1]), within(one[2], one[3], box[2], box[3])]];
  }

  function within(low, high, least, most) {
    return low < least ? least - low : high > most ? most - high : 0;
  }

  function moveWords(move) {
    const parts = [];
    if (move[0] !== 0) parts.push(lengthWords(move[0]) + (move[0] > 0 ? " to stage left" : " to stage right"));
    if (move[1] !== 0) parts.push(lengthWords(move[1]) + (move[1] > 0 ? " upstage" : " downstage"));
    return parts.join(" and ");
  }

  function lengthWords(length) {
    const words = both("length", Math.abs(length));
    return words[0] + " (" + words[1] + ")";
  }

  function lessened(wish, each) {
    if (each.sort === "height") {
      const words = both("length", each.by);
      return "Build it lower by " + words[0] + " (" + words[1] + ").";
    }
    if (each.limit <= 0) return "Leave it off this floor; a structural engineer decides.";
    if (each.sort === "mass") {
      const words = both("mass", each.limit);
      return "Spread it on plates, so that no foot presses with more than " + words[0] + " (" + words[1] + "); a structural engineer decides.";
    }
    const words = both("area", wish.weight_kg * plan.GRAVITY_M_S2 / each.limit);
    return "Spread it over " + words[0] + " (" + words[1] + ") or more; a structural engineer decides.";
  }

  function elsewhere(rect, wish, ground) {
    const one = extent(cornersOf(rect));
    for (const floor of ground.floors) {
      const box = extent(floor.corners);
      const large = one[1] - one[0] <= box[1] - box[0] && one[3] - one[2] <= box[3] - box[2];
      if (!["deck", wish.on].includes(floor.on) && large && !plan.stepped(floor)) return "By its size it goes in the " + plan.named(floor) + ". ";
    }
    return "";
  }

  function smaller(rect, wish, ground) {
    const one = extent(cornersOf(rect)), box = extent(plan.floorCalled(ground.floors, wish.on).corners), parts = [];
    for (const [axis, words] of [[0, " across"], [2, " in depth"]]) {
      const over = one[axis + 1] - one[axis] - (box[axis + 1] - box[axis]);
      if (over > plan.TOLERANCE_M) parts.push(lengthWords(over) + words);
    }
    return "Make it smaller" + (parts.length > 0 ? " by " + parts.join(" and ") : "") + ", or leave it off this stage.";
  }

  Object.assign(plan, { remedyOf });
})((window.housefit = window.housefit || {}));
