// What a rectangle of a stage plot stands on, how high it may be there, and what the floor carries. Twin of builder/fit/plots/hits.py and plot_floor.py.
(function (fit) {
  "use strict";
  const { FITS, NOTED, SHORT, ASK, factOf, valueOf, textOf, itemNotes, both } = fit;
  const { SLACK_M, ROUNDING_M, extent, liesWithin, meets } = fit.plan;
  const GRAVITY_M_S2 = 9.80665;
  const STEP = "How high is the floor of this wing against the deck?";
  const FLOAT_SHARE = 0.000000001;

  function hit(word, sort, words, more) {
    return { word, sort, words, by: 0, measure: "length", question: "", fact: null, box: null, limit: 0, ...more };
  }

  function ofWord(hits, word) {
    return hits.filter((each) => each.word === word);
  }

  function worst(hits) {
    return [SHORT, ASK, NOTED].find((word) => ofWord(hits, word).length > 0) || "";
  }

  function outlineOf(section, kind, name) {
    const found = section.outlines.find((outline) => outline.kind === kind && outline.name === name && outline.corners.length > 2);
    return found === undefined ? [] : found.corners;
  }

  function floorsOf(section, deck) {
    const wings = section.items.filter((item) => item.kind === "wing").map((item) => ({ on: item.name, item, corners: outlineOf(section, "wing", item.name) }));
    return [{ on: "deck", item: deck, corners: outlineOf(section, "deck", deck.name) }, ...wings.filter((wing) => wing.corners.length > 0)];
  }

  function floorCalled(floors, on) {
    return floors.find((floor) => floor.on === (on !== "" ? on : "deck")) || null;
  }

  function floorUnder(wish, rect, floors) {
    return floors.find((floor) => ["", floor.on].includes(wish.on) && liesWithin(rect, floor.corners)) || null;
  }

  function named(floor) {
    return floor.on === "deck" ? "deck" : "wing " + floor.item.name;
  }

  function outlineFact(floor) {
    const box = extent(floor.corners), item = floor.item;
    const across = both("length", box[1] - box[0]), depth = both("length", box[3] - box[2]);
    const text = across[0] + " × " + depth[0], also = across[1] + " × " + depth[1];
    return { key: item.key, item: item.name, label: "outline, across and in depth", text, standing: "stated", also, page: item.page, checked: item.checked };
  }

  function notInUse(floor) {
    const item = floor.item;
    if (item.condition !== "out of service" && item.terms !== "not for visitors") return [];
    const words = "the " + named(floor) + " is " + (item.condition === "out of service" ? "out of service" : "not for visitors");
    return [hit(SHORT, "use", words, { fact: outlineFact(floor) })];
  }

  function stepped(floor) {
    return floor.on !== "deck" && textOf(floor.item, "level_with_deck") !== "yes";
  }

  function tooHigh(wish, floor) {
    if (wish.height_m === null) return [];
    const item = floor.item, value = valueOf(item, "clear_height");
    if (value !== null && (value.standing === "none" || value.text === "no limit")) return [];
    if (stepped(floor)) return [hit(ASK, "height", "what is clear above the " + named(floor) + " counts from the deck, not from its own floor", { question: STEP })];
    const over = value !== null && value.number !== null ? wish.height_m - value.number : 0;
    if (over > SLACK_M) return [hit(SHORT, "height", both("length", over)[0] + " higher than what is clear above it", { by: over, fact: factOf(value, item) })];
    if (known(value)) {
      const words = both("length", over)[0] + " higher than what is clear above it, within the tolerance for rounding";
      return over > ROUNDING_M ? [hit(NOTED, "height", words)] : [];
    }
    const question = "How high is the lowest fixed thing above the " + named(floor) + "?";
    return [hit(ASK, "height", "nobody says how high the lowest thing above the " + named(floor) + " is", { question })];
  }

  function known(value) {
    return value !== null && value.number !== null && !value.bound;
  }

  function carried(wish, rect, floor, section) {
    const zones = section.items.filter((item) => item.kind === "zone").map((item) => ({ item, corners: outlineOf(section, "zone", item.name) }));
    const under = zones.filter((zone) => zone.corners.length > 0 && meets(rect, zone.corners));
    const covered = under.some((zone) => liesWithin(rect, zone.corners));
    const loads = (covered ? under : [floor, ...under]).flatMap((each) => loadsOn(wish, each.item, each.corners));
    return [...under.flatMap((zone) => zoneState(zone.item, zone.corners)), ...loads];
  }

  function zoneState(item, corners) {
    if (item.condition === "out of service") return [hit(SHORT, "use", item.name + " is out of service", { box: extent(corners) })];
    return itemNotes(item).map((words) => hit(NOTED, "state", words));
  }

  function loadsOn(wish, item, corners) {
    const found = [];
    if (wish.weight_kg !== null) found.push(loaded(wish.weight_kg * GRAVITY_M_S2 / (wish.width_m * wish.depth_m), "load", item, corners));
    if (wish.foot_kg !== null) found.push(loaded(wish.foot_kg, "mass", item, corners));
    return found;
  }

  function loaded(load, kind, item, corners) {
    const value = valueOf(item, kind === "load" ? "load" : "point_load");
    const words = both(kind, load)[0] + (kind === "load" ? " spread evenly on " : " on one foot on ") + item.name;
    const fact = value !== null ? factOf(value, item) : null;
    if (value !== null && value.number !== null) {
      const over = load - value.number;
      const carries = words + ", which carries " + both(kind, value.number)[0];
      const box = item.kind === "zone" ? extent(corners) : null;
      if (over > Math.abs(value.number) * FLOAT_SHARE) return hit(SHORT, kind, carries, { by: over, measure: kind, fact, box, limit: value.number });
      if (known(value)) return hit(FITS, kind, carries, { fact });
    }
    const what = kind === "load" ? "uniform load" : "largest single load, on what footprint,";
    const question = "What " + what + " does " + item.name + " carry, by whose letter?";
    return hit(ASK, kind, words + ", and nobody says what it carries", { question, fact });
  }

  Object.assign(fit.plan, { GRAVITY_M_S2, STEP, stepped, hit, ofWord, worst, floorsOf, floorCalled, floorUnder, named, outlineFact, notInUse, tooHigh, carried });
})((window.housefit = window.housefit || {}));
