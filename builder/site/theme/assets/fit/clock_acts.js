// The acts of a day by their times. Twin of builder/fit/clock/acts.py.
(function (fit) {
  "use strict";
  const TIMES = ["load in", "check from", "doors", "on stage", "ends"];
  const LENGTHS = ["set up", "line check", "check", "clear after check", "set", "changeover", "strike", "load out"];

  function actsOf(riders) {
    return riders.map((rider) => {
      const clock = rider.clock || blank();
      return { act: rider.act, clock, startsS: starts(clock), endsS: ends(clock) };
    });
  }

  function blank() {
    return { line: 0, day: "", parts: null, ...Object.fromEntries([...TIMES, ...LENGTHS].map((name) => [name, null])) };
  }

  function starts(clock) {
    if (clock["on stage"] !== null) return fit.ofTheShow(clock["on stage"]);
    return clock.ends !== null && clock.set !== null ? fit.ofTheShow(clock.ends) - clock.set : null;
  }

  function ends(clock) {
    if (clock.ends !== null) return fit.ofTheShow(clock.ends);
    return clock["on stage"] !== null && clock.set !== null ? fit.ofTheShow(clock["on stage"]) + clock.set : null;
  }

  function says(act, names) {
    return names.some((name) => act.clock[name] !== null);
  }

  function inOrder(acts) {
    if (acts.length < 2) return acts;
    const times = acts.map((act) => act.startsS);
    if (times.includes(null) || new Set(times).size < times.length) return [];
    return [...acts].sort((one, other) => one.startsS - other.startsS);
  }

  function workTime(act, name) {
    const time = act.clock[name], loadIn = act.clock["load in"];
    return time !== null && loadIn !== null && time < loadIn ? time + fit.DAY_S : time;
  }

  function doorsOf(acts) {
    const said = acts.filter((act) => act.clock.doors !== null);
    if (said.length === 0) return { s: null, asks: ["When are doors?"] };
    const times = [...new Set(said.map((act) => fit.ofTheShow(act.clock.doors)))].sort((one, other) => one - other);
    if (times.length > 1) return { s: null, asks: ["When are doors? The riders say " + times.map(fit.clock).join(" or ") + "."] };
    return { s: times[0], asks: [] };
  }

  function dayOf(acts) {
    const days = new Set(acts.map((act) => act.clock.day).filter((day) => day !== ""));
    return days.size === 1 ? [...days][0] : "";
  }

  Object.assign(fit, { TIMES, LENGTHS, actsOf, says, inOrder, workTime, doorsOf, dayOf });
})((window.housefit = window.housefit || {}));
