// What is in the way of a rectangle of a stage plot, and what to know about it. Twin of builder/fit/plots/in_the_way.py and plot_notes.py.
(function (fit) {
  "use strict";
  const { NOTED, SHORT, ASK, valueOf, itemNotes, both, metres } = fit;
  const plan = fit.plan;
  const { TOLERANCE_M, SLACK_M, ROUNDING_M, beyond, cornersOf, extent, hit, named, outlineFact } = plan;
  const COVERED_SHARE = 0.995;
  const ROUNDED = ", within the tolerance for rounding";

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
      ...plan.tooHigh(wish, floor), ...inTheWay(wish, rect, floor, ground.section),
      ...others.filter((other) => plan.overlap(rect, other.rect)).map((other) => overlapping(wish, rect, other)),
      ...plan.carried(wish, rect, floor, ground.section), ...beside(rect, floor),
      ...(holding === null ? [] : byRounding(rect, floor, others, ground.section)),
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

  function inTheWay(wish, rect, floor, section) {
    return section.outlines.filter((outline) => outline.kind === "obstruction" && outline.corners.length > 2 && plan.meets(rect, outline.corners)).flatMap((outline) => {
      const item = section.items.find((each) => each.kind === "obstruction" && each.name === outline.name);
      return blocked(wish, rect, floor, outline, item === undefined ? null : item);
    });
  }

  function blocked(wish, rect, floor, outline, item) {
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
    if (plan.stepped(floor)) return [hit(ASK, "height", hangs + " from the deck, which is not known to be level here", { question: plan.STEP, fact })];
    const over = wish.height_m - under.number;
    if (over > SLACK_M) return [hit(SHORT, "height", hangs + ", lower than it is high by " + both("length", over)[0], { by: over, fact, box })];
    return over > ROUNDING_M ? [hit(NOTED, "height", hangs + ", lower by " + metres(over) + ROUNDED)] : [];
  }

  function obstructionFact(item) {
    if (item === null) return null;
    return { key: item.key, item: item.name, label: "where it is", text: "on the stage plan", standing: "stated", also: "", page: item.page, checked: item.checked };
  }

  function overlapping(wish, rect, other) {
    const by = plan.overlapBy(rect, other.rect), name = other.wish.name;
    const words = other.wish.lane ? "it stands in the lane " + name : wish.lane ? name + " stands in this lane" : "it overlaps " + name;
    return hit(SHORT, "overlap", words + " by " + both("length", by)[0], { by, box: other.box });
  }

  function byRounding(rect, floor, others, section) {
    const words = beyond(rect, floor.corners, true).map((each) => both("length", each.over_m)[0] + " over the edge " + each.side);
    for (const other of others) {
      const by = plan.apart(rect, other.rect) ? 0 : plan.overlapBy(rect, other.rect);
      if (by > ROUNDING_M && by <= SLACK_M) words.push(both("length", by)[0] + " into " + other.wish.name);
    }
    const hanging = section.items.filter((item) => item.kind === "obstruction" && valueOf(item, "from_height") !== null).map((item) => item.name);
    for (const { kind, name, corners } of section.outlines) {
      if (kind !== "obstruction" || corners.length < 3 || hanging.includes(name) || !plan.touches(rect, corners) || plan.meets(rect, corners)) continue;
      const by = plan.into(rect, corners);
      if (by > ROUNDING_M) words.push(both("length", by)[0] + " into " + name);
    }
    return words.map((each) => hit(NOTED, "rounding", each + ROUNDED));
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

  Object.assign(plan, { hitsOf, counts, larger });
})((window.housefit = window.housefit || {}));
