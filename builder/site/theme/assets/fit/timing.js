// The times and lengths of a show's day, from its rider's plain data. Twin of builder/rider/timing.py.
(function (fit) {
  "use strict";
  const PARTS = ["roll on", "patch", "monitors", "spare"];

  // `ways` are the readers of asking.js: time, length, count and yes or no of one key, null where it is not written or cannot be read.
  function timingOf(found, parts, ways) {
    const clock = { line: ways.line(found), day: ways.day().toLowerCase() };
    for (const name of fit.TIMES) clock[name] = ways.time(found, name);
    for (const name of fit.LENGTHS) clock[name] = ways.length(found, name);
    clock.parts = parts === null ? null : partsOf(parts, ways);
    return clock;
  }

  function partsOf(parts, ways) {
    const found = { line: ways.line(parts) };
    for (const name of PARTS) found[name] = ways.length(parts, name);
    for (const name of ["lines", "lines a minute"]) found[name] = ways.count(parts, name);
    found.before = ways.yes(parts, "lines checked before");
    return found;
  }

  Object.assign(fit, { timingOf });
})((window.housefit = window.housefit || {}));
