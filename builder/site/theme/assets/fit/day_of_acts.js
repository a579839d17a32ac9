// The acts of one day that the page holds, one of them in the form: what a file does, what they are called, and the address that keeps them.
(function (fit) {
  "use strict";
  const MOST = 12;
  // Mail programs and chats cut long addresses; 8,000 characters is where many stop (common practice, no source).
  const LONG = 8000;

  function newAct(data, places) {
    return { data: { act: "", ...data }, places: places || new Map() };
  }

  function newDay() {
    return { acts: [newAct()], at: 0 };
  }

  function isEmpty(data) {
    return Object.keys(data).every((key) => key === "act" && data.act === "");
  }

  function written(act) {
    return typeof act.data.act === "string" ? fit.folded(act.data.act) : "";
  }

  // What each act is called; the check tells acts apart by their names, so no two may be the same.
  function actNames(day) {
    const names = [];
    for (const [index, act] of day.acts.entries()) {
      const name = written(act) || (day.acts.length === 1 ? "The show" : "Act " + (index + 1));
      let own = name;
      for (let again = 2; names.includes(own); again += 1) own = name + " (" + again + ")";
      names.push(own);
    }
    return names;
  }

  // The names that were written, empty where there is none.
  function writtenNames(day) {
    return day.acts.map(written);
  }

  // A rider's file: it fills an empty form, takes the place of the act of that name, or is one act more.
  function takeIn(day, data, places) {
    const act = newAct(data, places),
      name = written(act);
    const same = name === "" ? -1 : day.acts.findIndex((each) => written(each) === name);
    const free = same >= 0 ? same : day.acts.findIndex((each) => isEmpty(each.data));
    if (free < 0 && day.acts.length >= MOST)
      throw new fit.Refused("It is one act more than the " + MOST + " that fit on this page.");
    if (free < 0) day.acts.push(act);
    else day.acts[free] = act;
    day.at = free < 0 ? day.acts.length - 1 : free;
  }

  function addAct(day) {
    if (day.acts.length >= MOST) return;
    day.acts.push(newAct());
    day.at = day.acts.length - 1;
  }

  function removeAct(day) {
    day.acts.splice(day.at, 1);
    if (day.acts.length === 0) day.acts.push(newAct());
    day.at = Math.min(day.at, day.acts.length - 1);
  }

  function addressOf(day) {
    const kept = day.acts.filter((act) => !isEmpty(act.data));
    if (kept.length === 0) return "";
    return kept.length === 1
      ? "#show=" + encodeURIComponent(JSON.stringify(kept[0].data))
      : "#day=" + encodeURIComponent(JSON.stringify(kept.map((act) => act.data)));
  }

  function fromAddress(hash) {
    const [, kind, text] = /^#(show|day)=(.*)$/s.exec(hash) || [];
    if (kind === undefined) return null;
    try {
      const found = JSON.parse(decodeURIComponent(text));
      const acts = (kind === "show" ? [found] : Array.isArray(found) ? found : []).filter(
        (each) => each !== null && typeof each === "object" && !Array.isArray(each),
      );
      return acts.length === 0
        ? null
        : { acts: acts.slice(0, MOST).map((each) => newAct(tidy(each, 0))), at: 0 };
    } catch {
      return null;
    }
  }

  // Only texts, lists and groups of a rider's size come in by the address.
  function tidy(value, depth) {
    if (depth > 6) return "";
    if (typeof value === "string") return value.slice(0, 2000);
    if (Array.isArray(value)) return value.slice(0, 500).map((each) => tidy(each, depth + 1));
    if (value !== null && typeof value === "object")
      return Object.fromEntries(
        Object.entries(value)
          .slice(0, 50)
          .filter(([key]) => key !== "__proto__")
          .map(([key, each]) => [key, tidy(each, depth + 1)]),
      );
    return String(value);
  }

  Object.assign(fit, {
    MOST_ACTS: MOST,
    LONG_ADDRESS: LONG,
    newDay,
    actNames,
    writtenNames,
    takeIn,
    addAct,
    removeAct,
    addressOf,
    fromAddress,
  });
})((window.housefit = window.housefit || {}));
