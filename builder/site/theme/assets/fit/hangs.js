// A rider's hangs as requirements in SI, with what cannot be read. Twin of builder/rider/hanging.py and hangs.py. The tools are those of asking.js.
(function (fit) {
  "use strict";
  const { both, count, folded, position } = fit;
  const LEAST_APART_M = 0.01;
  const OFF_END_M = 0.005;
  const MOST_SUPPORTS = 12;
  const HOISTS = { counted: "hoists in that", none: "dead hung" };
  const KEYS = {
    hangs: ["name", "supports", "length", "weight", "weight in all", "loads", "hoists", "hoist weight", "trim", "below steel", "strictness", "note"],
    supports: ["point", "across", "depth", "apex", "at", "load"],
    loads: ["what", "count", "weight", "at", "from", "to"],
  };

  function askedOf(asking, hang, index, tools) {
    const where = "hangs " + (index + 1), before = asking.problems.length;
    const wrong = (reason) => tools.wrong(asking, where, reason);
    if (!isGroup(hang, KEYS.hangs, wrong)) return [];
    const read = (record, key, kind) => siOf(tools.read(asking, record, key, kind, where));
    const words = (record, key) => tools.text(asking, record, key, where);
    const place = (record, key, way) => (words(record, key) === "" ? null : tools.attempt(asking, where, key, () => position(record[key], way, asking.units)));
    const name = words(hang, "name");
    if (name === "") wrong("needs a name");
    if (hang.name !== undefined && asking.data.hangs.some((other) => other !== hang && other !== null && typeof other === "object" && other.name !== undefined && words(other, "name") === name)) wrong("has the name of another hang");
    const supports = listOf(hang, "supports", wrong).map((each) => supportOf(each, { read, words, place, wrong }));
    const loads = listOf(hang, "loads", wrong).map((each) => loadOf(asking, each, { read, words, wrong, where, tools }));
    const sizes = { length: read(hang, "length", "length"), weight: read(hang, "weight", "mass per length"), inAll: read(hang, "weight in all", "mass") };
    const hoistWeight = read(hang, "hoist weight", "mass"), trim = place(hang, "trim", "height"), below = read(hang, "below steel", "length");
    const hoists = tools.choice(asking, hang, "hoists", ["show", "house", "counted", "none"], "", where);
    const strictness = tools.choice(asking, hang, "strictness", ["must", "should"], "must", where);
    if (hang.note !== undefined) words(hang, "note");
    if (asking.problems.length > before) return [];
    if (supports.length === 0 || supports.length > MOST_SUPPORTS) wrong("needs 1 to " + MOST_SUPPORTS + " supports; split a longer hang");
    const points = supports.map((each) => each.point.toLowerCase()).filter((each) => each !== "");
    if (new Set(points).size < points.length) wrong("names a point twice; write each point once");
    if ((hoists === "show") !== (hoistWeight !== null)) wrong("needs hoists: show together with hoist weight, or neither");
    if (below !== null && trim === null) wrong("has below steel without a trim; write trim too");
    if (trim !== null && trim < 0) wrong("has a trim below the deck");
    (supports.some((each) => each.load_kg !== null) ? statedProblems : weighedProblems)(supports, loads, sizes, wrong);
    if (asking.problems.length > before) return [];
    return records(asking, hang, { name, supports, hoists, trim, below, strictness, hoistWeight, loads: placedLoads(loads, sizes) }, tools);
  }

  function isGroup(record, keys, wrong) {
    if (record === null || typeof record !== "object" || Array.isArray(record)) {
      wrong("should be a group of keys");
      return false;
    }
    for (const key of Object.keys(record)) if (!keys.includes(key)) wrong("has the key '" + key + "', which is not known here");
    return true;
  }

  function listOf(record, key, wrong) {
    if (record[key] === undefined) return [];
    if (Array.isArray(record[key])) return record[key];
    wrong(key + " should be a list; begin each entry with '- '");
    return [];
  }

  function siOf(found) {
    return found === null ? null : found.si;
  }

  function supportOf(record, { read, words, place, wrong }) {
    const found = { point: "", across_m: null, depth_m: null, apex_m: null, at_m: null, load_kg: null };
    if (!isGroup(record, KEYS.supports, wrong)) return found;
    Object.assign(found, { point: words(record, "point"), across_m: place(record, "across", "across"), depth_m: place(record, "depth", "depth") });
    Object.assign(found, { apex_m: place(record, "apex", "height"), at_m: read(record, "at", "length"), load_kg: read(record, "load", "mass") });
    if ((found.across_m === null) !== (found.depth_m === null)) wrong("has a support that needs both across and depth, or a point");
    else if (found.point !== "" && found.across_m !== null) wrong("has a support with a point beside a spot; write one of them");
    else if (found.apex_m !== null && found.across_m === null) wrong("has a support with an apex and no spot; write across and depth too");
    if (found.apex_m !== null && found.apex_m < 0) wrong("has an apex below the deck");
    return found;
  }

  function loadOf(asking, record, { read, words, wrong, where, tools }) {
    const found = { kg: 0, at: null, from: null, to: null };
    if (!isGroup(record, KEYS.loads, wrong)) return found;
    if (words(record, "what") === "") wrong("has a load that does not say what it is");
    const number = words(record, "count") === "" ? 1 : tools.attempt(asking, where, "count", () => count(record.count));
    const weight = read(record, "weight", "mass");
    if (words(record, "weight") === "") wrong("has a load without a weight");
    Object.assign(found, { kg: (number || 0) * (weight || 0), at: read(record, "at", "length"), from: read(record, "from", "length"), to: read(record, "to", "length") });
    const spread = (found.from !== null ? 1 : 0) + (found.to !== null ? 1 : 0);
    if ((found.at !== null && spread > 0) || spread === 1) wrong("has a load that needs either at, or both from and to");
    else if (spread === 2 && found.to <= found.from) wrong("has a load that ends before it begins");
    return found;
  }

  function statedProblems(supports, loads, sizes, wrong) {
    if (supports.some((each) => each.load_kg === null)) wrong("states the load of some supports only; write load at every support, or at none");
    if (loads.length > 0 || sizes.weight !== null || sizes.inAll !== null) wrong("states loads at its supports beside weights; keep one of them");
  }

  function weighedProblems(supports, loads, sizes, wrong) {
    if (loads.length === 0 && sizes.weight === null && sizes.inAll === null) wrong("does not say what it weighs; write load at each support, or weight and loads");
    if (sizes.weight !== null && sizes.inAll !== null) wrong("tells its own weight twice; keep one of them");
    const several = supports.length > 1, spread = sizes.inAll !== null || loads.some((each) => each.at === null && each.from === null);
    if (sizes.length === null && (sizes.weight !== null || (several && spread))) wrong("needs a length, for a weight is spread over it");
    const places = supports.map((each) => each.at_m).filter((each) => each !== null).sort((one, other) => one - other);
    if (several && places.length < supports.length) wrong("does not say where along it each support is; write at for every support");
    else if (places.some((each, index) => index > 0 && each - places[index - 1] < LEAST_APART_M)) wrong("has two supports at one place");
    const ends = [...places, ...loads.flatMap((each) => [each.at, each.from, each.to]).filter((each) => each !== null)];
    if (sizes.length !== null && ends.some((each) => each > sizes.length + OFF_END_M)) wrong("is shorter than a place on it; count places from the first end");
    if (sizes.length !== null && sizes.length <= 0) wrong("has no length; leave it out for a hang at one place");
  }

  function placedLoads(loads, sizes) {
    const length = sizes.length === null ? 0 : sizes.length, found = [];
    if (sizes.weight !== null) found.push({ from_m: 0, to_m: length, kg: sizes.weight * length });
    if (sizes.inAll !== null) found.push({ from_m: 0, to_m: length, kg: sizes.inAll });
    for (const each of loads) {
      if (each.at !== null) found.push({ from_m: each.at, to_m: each.at, kg: each.kg });
      else found.push({ from_m: each.from === null ? 0 : each.from, to_m: each.from === null ? length : each.to, kg: each.kg });
    }
    return found;
  }

  function records(asking, hang, found, tools) {
    let total = 0;
    for (const each of [...found.supports.map((support) => support.load_kg || 0), ...found.loads.map((load) => load.kg)]) total += each;
    const words = both("mass", total), number = found.supports.length;
    const need = number + " support" + (number === 1 ? "" : "s") + ", " + words[0] + " (" + words[1] + ") in all, " + (HOISTS[found.hoists] || "hoists apart");
    const supports = found.supports.map((each) => ({ ...each, at_m: each.at_m === null ? 0 : each.at_m }));
    const out = [tools.blank(asking, tools.lineOf(asking, hang), "hang", "rigging", "Hang: " + found.name, need, {
      strictness: found.strictness, supports, loads: found.loads, hoists: found.hoists, hoist_kg: found.hoistWeight === null ? 0 : found.hoistWeight,
    })];
    if (found.trim !== null) {
      out.push(tools.blank(asking, tools.lineOf(asking, hang, "trim"), "trim", "rigging", "Trim of " + found.name, "underside at " + folded(hang.trim), {
        strictness: found.strictness, trim_m: found.trim, below_m: found.below,
      }));
    }
    return out;
  }

  Object.assign(fit, { hangsAsked: askedOf, HANG_KEYS: KEYS });
})((window.housefit = window.housefit || {}));
