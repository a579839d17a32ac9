// Riders as the form holds them, plain data, and as the compiled reader takes them, a tree with places. No rule of reading stands here.
(function (fit) {
  "use strict";
  const reader = (window.housecheck = window.housecheck || {});
  const MOST_TOLD = 3;

  // What cannot be opened, in words for whoever opened it.
  class Refused extends Error {}

  // A rider's text as data, with the node of each list and group, so that lines are told as long as the file is what it was.
  function openRider(text) {
    const { tree, mistakes } = reader.read_tree(text);
    if (mistakes.length > 0) throw new Refused(told(mistakes));
    const places = new Map();
    return { data: dataOf(tree, places), places };
  }

  function told(mistakes) {
    const words = mistakes
      .slice(0, MOST_TOLD)
      .map(
        (each) =>
          (each.line > 0 ? "Line " + each.line + ": " : "It ") + reader.mistake_words(each) + ".",
      );
    const more = mistakes.length - words.length;
    return words.join(" ") + (more > 0 ? " And " + more + " more." : "");
  }

  function dataOf(node, places) {
    if (node.kind === "text") return node.text;
    const data =
      node.kind === "list"
        ? node.items.map((item) => dataOf(item, places))
        : Object.fromEntries(node.entries.map(({ key, value }) => [key, dataOf(value, places)]));
    places.set(data, node);
    return data;
  }

  // Data as a tree. What came from a file has its lines; what was typed has line 0.
  function treeOf(data, places, near) {
    if (data === null || typeof data !== "object")
      return node("text", near, { text: String(data) });
    const known = places.get(data),
      here = known || near;
    if (Array.isArray(data)) {
      const items = data.map((item, index) =>
        treeOf(item, places, known ? known.items[index] : undefined),
      );
      return node("list", here, { items });
    }
    const entries = Object.entries(data).map(([key, value]) => {
      const entry = known ? known.entries.find((each) => each.key === key) : undefined;
      return {
        key,
        ...placeOf(entry),
        value: treeOf(value, places, entry ? entry.value : undefined),
      };
    });
    return node("group", here, { entries });
  }

  function placeOf(known) {
    return { line: known ? known.line : 0, column: known ? known.column : 0 };
  }

  function node(kind, known, more) {
    return { kind, text: "", items: [], entries: [], ...placeOf(known), ...more };
  }

  // { rider, plays, problems } of an act under a name. Requirements and problems tell their part of the form, such as needs 2.
  function riderOf(act, name, pack) {
    const whole = treeOf(act.data, act.places);
    const named = {
      key: "act",
      line: 0,
      column: 0,
      ...whole.entries.find((entry) => entry.key === "act"),
      value: node("text", undefined, { text: name }),
    };
    const tree = {
      ...whole,
      entries: [named, ...whole.entries.filter((entry) => entry.key !== "act")],
    };
    const read = reader.read_form(tree, pack.language, pack.rules, pack.units);
    read.rider.requirements.forEach((each, index) => {
      each.slot = slotOf(read.parts[index]);
    });
    const problems = read.mistakes.map((each) => ({
      where: slotOf(each.part),
      reason: reader.mistake_words(each),
    }));
    return { rider: read.rider, plays: read.plays, problems };
  }

  function slotOf(part) {
    return part.replace(/\[(\d+)\]$/, " $1");
  }

  function writeRider(data) {
    return reader.write_rider(treeOf(data, new Map()));
  }

  // What may be chosen for a key of a group.
  function choices(pack, group, key) {
    return pack.language.groups[group].find((rule) => rule.key === key).choices;
  }

  function folded(text) {
    return text.trim().split(/\s+/).join(" ");
  }

  Object.assign(fit, { Refused, openRider, riderOf, writeRider, choices, folded });
})((window.housefit = window.housefit || {}));
