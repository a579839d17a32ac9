// What feeds what, and how much is free on each phase. Twin of builder/fit/power/.
(function (fit) {
  "use strict";
  const { valueOf, textOf } = fit;
  const PHASES = ["L1", "L2", "L3"];
  const ROUNDING = 0.000001;

  function tree(section) {
    const nodes = new Map();
    for (const item of section !== null ? section.items : []) {
      if (["supply", "generator", "service", "board"].includes(item.kind)) {
        nodes.set(item.name, { free: freeOn(item), least: leastOn(item), above: textOf(item, "fed_from"), item });
      }
    }
    return nodes;
  }

  function leastOn(item) {
    const least = freeOn(item);
    for (const phase of PHASES) {
      if (least[phase] !== null && item.values["free." + phase].bound) {
        const lower = valueOf(item, "free-least." + phase);
        least[phase] = lower !== null ? lower.number : 0;
      }
    }
    return least;
  }

  function freeOn(item) {
    const free = {};
    for (const phase of PHASES) {
      const value = valueOf(item, "free." + phase);
      free[phase] = value !== null ? value.number : null;
    }
    return free;
  }

  function freeOf(item) {
    return leastFree(freeOn(item));
  }

  function leastFree(free) {
    let least = null;
    for (const phase of PHASES) {
      if (free[phase] !== null && (least === null || free[phase] < least)) least = free[phase];
    }
    return least;
  }

  function fullest(item) {
    const least = freeOf(item);
    for (const phase of PHASES) {
      const value = valueOf(item, "free." + phase);
      if (value !== null && least !== null && value.number === least) return value;
    }
    return valueOf(item, "rating");
  }

  function above(start, nodes) {
    const path = [];
    for (let name = start; nodes.has(name) && !path.includes(name); name = nodes.get(name).above) path.push(name);
    return path;
  }

  function outage(path, nodes) {
    return path.find((name) => nodes.get(name).item.condition === "out of service") || "";
  }

  function roomOf(nodes) {
    return new Map([...nodes].map(([name, node]) => [name, node.free]));
  }

  function leastOfAll(nodes) {
    return new Map([...nodes].map(([name, node]) => [name, node.least]));
  }

  function notSure(path, phases, room, nodes) {
    for (const name of path) {
      for (const phase of phases) {
        const here = room.get(name)[phase], node = nodes.get(name);
        if (here !== null && here - (node.free[phase] - node.least[phase]) < -ROUNDING) return name;
      }
    }
    return null;
  }

  function leastRoom(path, phases, room) {
    let least = null;
    for (const name of path) {
      for (const phase of phases) {
        const here = room.get(name)[phase];
        if (here !== null && (least === null || here < least)) least = here;
      }
    }
    return least;
  }

  function less(room, path, phases, current) {
    const left = new Map(room);
    for (const name of path) {
      const here = {};
      for (const phase of PHASES) {
        const free = room.get(name)[phase];
        here[phase] = free === null || !phases.includes(phase) ? free : free - current;
      }
      left.set(name, here);
    }
    return left;
  }

  function systemOf(item, section) {
    const seen = [];
    let here = item;
    while (here !== null && !seen.includes(here.name)) {
      seen.push(here.name);
      if (valueOf(here, "system") !== null) return here.values.system.text;
      const aboveName = textOf(here, "fed_from");
      here = section.items.find((other) => other.name === aboveName && other.kind !== "load" && other.kind !== "outlet") || null;
    }
    return "";
  }

  function volts(text) {
    return text.split("V")[0].replaceAll(" ", "");
  }

  Object.assign(fit, { PHASES, ROUNDING, tree, freeOf, leastFree, leastOfAll, notSure, fullest, above, outage, roomOf, leastRoom, less, systemOf, volts });
})((window.housefit = window.housefit || {}));
