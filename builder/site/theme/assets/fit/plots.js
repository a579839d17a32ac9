// A rider's stage plot as one requirement in SI, with what cannot be read. Twin of builder/rider/plot.py. The tools are those of asking.js.
(function (fit) {
  "use strict";
  const { yesNo, folded, position } = fit;
  const FLOORS = ["deck", "stage left", "stage right", "upstage"];
  const MOST_RECTANGLES = 100;
  const RECTANGLE = ["name", "width", "depth", "at", "turned", "on", "height", "weight", "point load", "keep clear", "stays", "strictness"];
  const SPOT = ["across", "depth"];

  // The stage plot as one requirement.
  function plotAsked(asking, found, tools) {
    const { wrong, blank, lineOf } = tools;
    if (found.length === 0) return [];
    if (found.length > MOST_RECTANGLES) wrong(asking, "plot", "has " + found.length + " rectangles, and at most " + MOST_RECTANGLES + " are looked at");
    const rectangles = found.map((each, index) => plotted(asking, each, "plot " + (index + 1), tools)).filter((each) => each !== null);
    const need = found.length + " rectangle" + (found.length === 1 ? "" : "s");
    return rectangles.length < found.length ? [] : [blank(asking, lineOf(asking, asking.data, "plot"), "plot", "stage", "Stage plot", need, { rectangles })];
  }

  function plotted(asking, one, where, tools) {
    const { text, attempt, read, choice, lineOf, wrong } = tools;
    if (!isGroup(asking, one, RECTANGLE, where, tools)) return null;
    const name = text(asking, one, "name", where), at = spot(asking, one, where, tools);
    const [width, depth, height] = ["width", "depth", "height"].map((key) => read(asking, one, key, "length", where));
    const [weight, foot] = ["weight", "point load"].map((key) => read(asking, one, key, "mass", where));
    const turned = read(asking, one, "turned", "angle", where);
    const on = choice(asking, one, "on", FLOORS, "", where);
    const told = (key) => (text(asking, one, key, where) === "" ? "" : attempt(asking, where, key, () => yesNo(one[key])));
    const [lane, stays] = [told("keep clear"), told("stays")];
    if (name === "" || width === null || depth === null || width.si === 0 || depth.si === 0) {
      wrong(asking, where, "needs a name, and a width and a depth above zero");
      return null;
    }
    const words = (value, key, after) => (value === null ? "" : folded(one[key]) + after);
    const parts = [
      lane === "yes" ? "a lane to keep clear" : "", folded(one.width) + " wide", folded(one.depth) + " deep", words(height, "height", " high"),
      words(weight, "weight", " in all"), words(foot, "point load", " on one foot"), turned === null ? "" : "turned " + folded(one.turned),
      on !== "" ? "on " + on : "", at.words === "" ? "no place given" : "centre at " + at.words,
    ];
    const si = (value) => (value === null ? null : value.si);
    return {
      name, line: lineOf(asking, one), need: parts.filter((part) => part !== "").join(", "),
      strictness: choice(asking, one, "strictness", ["must", "should"], "must", where),
      width_m: width.si, depth_m: depth.si, across_m: at.across_m, upstage_m: at.upstage_m, turned_deg: si(turned) || 0, on,
      height_m: si(height), weight_kg: si(weight), foot_kg: si(foot), lane: lane === "yes", stays: stays || "",
    };
  }

  function isGroup(asking, record, keys, where, tools) {
    if (record === null || typeof record !== "object" || Array.isArray(record)) {
      tools.wrong(asking, where, "should be a group of keys");
      return false;
    }
    for (const key of Object.keys(record)) if (!keys.includes(key)) tools.wrong(asking, where, "has the key '" + key + "', which is not known here");
    return true;
  }

  // A spot in metres and in words; no numbers where none is written.
  function spot(asking, one, where, tools) {
    const { text, attempt } = tools, at = one.at;
    if (at === undefined || !isGroup(asking, at, SPOT, where, tools)) return { across_m: null, upstage_m: null, words: "" };
    const [across_m, upstage_m] = SPOT.map((key) => attempt(asking, where, key, () => position(text(asking, at, key, where), key, asking.units)));
    const whole = across_m !== null && upstage_m !== null;
    return { across_m: whole ? across_m : null, upstage_m: whole ? upstage_m : null, words: SPOT.map((key) => text(asking, at, key, where)).join(", ") };
  }

  Object.assign(fit, { plotAsked });
})((window.housefit = window.housefit || {}));
