// What is in the way of a rectangle of a stage plot, and what would mend it. Twin of builder/fit/plot_way.py and plot_remedies.py.
(function (fit) {
  "use strict";
  const { NOTED, SHORT, ASK, valueOf, itemNotes, both, metres } = fit;
  const plan = fit.plan;
  const { TOLERANCE_M, SLACK_M, beyond, cornersOf, extent, hit, ofWord, named, outlineFact } = plan;
  const COVERED_SHARE = 0.995;
  const MOST_TRIED = 8;
  const FIXED = ["load", "mass", "height"];
  const SMALLER = "Make it smaller, or leave it off this stage.";
  const ENGINEER = "the house's engineer";
  const SHOW = "the show";

  function hitsOf(wish, rect, others, ground) {
    const called = plan.floorCalled(ground.floors, wish.on);
    if (called === null) {
      const question = "How large is the wing " + wish.on + ", is it level with the deck, and what does it carry?";
      return [hit(ASK, "floor", "the pack describes no wing " + wish.on, { question })];
    }
    const holding = plan.floorUnder(wish, rect, ground.floors);
    const floor = holding === null ? called : holding;
    return [
      ...plan.notInUse(floor), ...(holding === null ? overEdges(wish, rect, floor, ground) : larger(rect, floor)),
      ...plan.tooHigh(wish, floor), ...inTheWay(wish, rect, ground.section),
      ...others.filter((other) => counts(other.wish, wish) && plan.overlap(rect, other.rect)).map((other) => overlapping(wish, rect, other)),
      ...plan.carried(wish, rect, floor, ground.section), ...beside(rect, floor),
    ];
  }

  function counts(other, wish) {
    return !(other.lane && wish.lane) && (other.strictness === "must" || wish.strictness === "should");
  }

  function overEdges(wish, rect, floor, ground) {
    const over = beyond(rect, floor.corners);
    const fact = outlineFact(floor), box = extent(floor.corners);
    const wings = ground.floors.filter((each) => each.on !== "deck" && plan.meets(rect, each.corners));
    if (wish.on === "" && wings.length > 0 && covered(rect, [floor, ...wings])) return wings.map((wing) => across(over, wing));
    if (over.length === 0) return [hit(SHORT, "edge", "it stands off the " + named(floor), { by: outside(extent(cornersOf(rect)), box), fact })];
    return over.map((each) => hit(SHORT, "edge", both("length", each.over_m)[0] + " over the edge " + each.side + " of the " + named(floor), { by: each.over_m, fact }));
  }

  function covered(rect, floors) {
    let total = 0;
    for (const floor of floors) total += plan.shared(rect, floor.corners);
    return total >= rect.width * rect.depth * COVERED_SHARE;
  }

  function across(over, wing) {
    const by = over.reduce((most, each) => Math.max(most, each.over_m), 0);
    const level = valueOf(wing.item, "level_with_deck");
    const words = "it reaches " + (by > 0 ? both("length", by)[0] + " " : "") + "off the deck into the " + named(wing);
    if (level !== null && level.text === "no") return hit(SHORT, "edge", words + ", which is not level with the deck", { by, fact: outlineFact(wing) });
    const question = "May this stand across the edge of the deck, partly in the " + named(wing) + "?";
    return hit(ASK, "edge", words, { question, fact: outlineFact(wing) });
  }

  function outside(one, other) {
    return Math.max(other[0] - one[0], one[1] - other[1], other[2] - one[2], one[3] - other[3], 0);
  }

  function larger(rect, floor) {
    const one = extent(cornersOf(rect)), other = extent(floor.corners), found = [];
    for (const [axis, words] of [[0, "wider"], [2, "deeper"]]) {
      const over = one[axis + 1] - one[axis] - (other[axis + 1] - other[axis]);
      if (over > SLACK_M) found.push(hit(SHORT, "size", both("length", over)[0] + " " + words + " than the whole " + named(floor), { by: over, fact: outlineFact(floor) }));
    }
    return found;
  }

  function inTheWay(wish, rect, section) {
    return section.outlines.filter((outline) => outline.kind === "obstruction" && outline.corners.length > 2 && plan.meets(rect, outline.corners)).flatMap((outline) => {
      const item = section.items.find((each) => each.kind === "obstruction" && each.name === outline.name);
      return blocked(wish, rect, outline, item === undefined ? null : item);
    });
  }

  function blocked(wish, rect, outline, item) {
    const under = item !== null ? valueOf(item, "from_height") : null;
    const box = extent(outline.corners), fact = obstructionFact(item);
    if (under === null) {
      const by = plan.into(rect, outline.corners);
      return [hit(SHORT, "obstruction", outline.name + " stands " + both("length", by)[0] + " inside it", { by, fact, box })];
    }
    if (under.number === null) {
      const question = "How high above the deck is the underside of " + outline.name + "?";
      return [hit(ASK, "height", outline.name + " hangs above it, and nobody says how high", { question, fact })];
    }
    const hangs = outline.name + " hangs above it, " + metres(under.number) + " up";
    if (wish.height_m === null) return [hit(NOTED, "height", hangs + "; the rider does not say how high this is")];
    const over = wish.height_m - under.number;
    return over > SLACK_M ? [hit(SHORT, "height", hangs + ", lower than it is high by " + both("length", over)[0], { by: over, fact, box })] : [];
  }

  function obstructionFact(item) {
    if (item === null) return null;
    return { key: item.key, item: item.name, label: "where it is", text: "on the stage plan", standing: "stated", also: "", page: item.page, checked: item.checked };
  }

  function overlapping(wish, rect, other) {
    const by = plan.overlapBy(rect, other.rect), name = other.wish.name;
    const words = other.wish.lane ? "it stands in the lane " + name : wish.lane ? name + " stands in this lane" : "it overlaps " + name;
    return hit(SHORT, "overlap", words + " by " + both("length", by)[0], { by, box: extent(cornersOf(other.rect)) });
  }

  function beside(rect, floor) {
    if (floor.on !== "deck") return inAWing(floor);
    const box = extent(cornersOf(rect)), notes = [];
    const width = valueOf(floor.item, "usable_width"), depth = valueOf(floor.item, "usable_depth");
    if (width !== null && width.number !== null && Math.max(-box[0], box[1]) > width.number / 2 + TOLERANCE_M) {
      notes.push(hit(NOTED, "clear", "it reaches past the clear width of " + metres(width.number) + ", if that lies evenly about the centre line"));
    }
    if (depth !== null && depth.number !== null && box[3] > extent(floor.corners)[2] + depth.number + TOLERANCE_M) {
      notes.push(hit(NOTED, "clear", "it reaches past the clear depth of " + metres(depth.number) + ", if that counts from the front edge"));
    }
    return notes;
  }

  function inAWing(floor) {
    const level = valueOf(floor.item, "level_with_deck");
    const notes = itemNotes({ ...floor.item, name: "the " + named(floor) }).map((words) => hit(NOTED, "state", words));
    if (level === null || !["yes", "no"].includes(level.text)) return [...notes, hit(NOTED, "level", "nobody says whether the " + named(floor) + " is level with the deck")];
    return level.text === "no" ? [...notes, hit(NOTED, "level", "the " + named(floor) + " is not level with the deck")] : notes;
  }

  function remedyOf(wish, rect, others, ground, hits) {
    const fixed = ofWord(hits, SHORT).filter((each) => FIXED.includes(each.sort));
    const lighter = fixed.map((each) => lessened(wish, each)).join(" ");
    const who = fixed.some((each) => each.sort !== "height") ? ENGINEER : SHOW;
    const size = (move) => Math.abs(move[0]) + Math.abs(move[1]);
    const tries = moves(wish, rect, ground, hits).sort((one, other) => size(one) - size(other));
    for (const allowed of [[], FIXED]) {
      const more = allowed.length > 0 ? " " + lighter : "";
      for (const move of tries) {
        if (mends(wish, plan.moved(rect, move[0], move[1]), others, ground, allowed)) return ["Move it " + moveWords(move) + "." + more, SHOW];
      }
      if (mends(wish, plan.quarterTurned(rect), others, ground, allowed) && !mends(wish, rect, others, ground, allowed)) return ["Turn it by a quarter." + more, SHOW];
      if (fixed.length > 0 && mends(wish, rect, others, ground, FIXED)) return [lighter, who];
    }
    return [elsewhere(rect, wish, ground), SHOW];
  }

  function mends(wish, rect, others, ground, allowed) {
    const hits = hitsOf(wish, rect, others, ground);
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
      const box = extent(floor.corners), level = valueOf(floor.item, "level_with_deck");
      const large = one[1] - one[0] <= box[1] - box[0] && one[3] - one[2] <= box[3] - box[2];
      if (!["deck", wish.on].includes(floor.on) && large && level !== null && level.text === "yes") return "By its size it goes in the " + named(floor) + ". " + SMALLER;
    }
    return SMALLER;
  }

  Object.assign(plan, { hitsOf, larger, remedyOf });
})((window.housefit = window.housefit || {}));
