// The page 'Check your show': a form that may stay mostly empty, verdicts as one types. Everything is built with text nodes.
(function (fit) {
  "use strict";
  const root = document.getElementById("check");
  const pack = fit.pack;
  // The check, compiled from the rules in Python. The form stands before it has come.
  const engine = (window.housecheck = window.housecheck || {});
  if (root === null || pack === undefined) return;
  const TO_THE_HOUSE = "Questions to the house";
  const TO_THE_ACTS = "Questions to the acts";
  const WORDS = {
    fits: "fits",
    "fits, with a note": "note",
    short: "short",
    ask: "ask",
    "not needed": "not-needed",
  };
  const EXAMPLES = {
    length: "12 m or 40 ft",
    mass: "900 kg or 2000 lb",
    load: "7.2 kPa or 150 psf",
    area: "40 m2",
    count: "2",
    current: "32 A",
    duration: "4 h",
    share: "3 %",
    temperature: "21 °C",
    "data rate": "20 Mbit/s",
  };
  // What makes a need of others, and what a row of the form cannot hold.
  const COMPOSED = ["any of", "all of", "if", "unless", "tell", "by class"];
  const MANY = ["any", "all", "if", "classes"];
  const arrived = fit.fromAddress(location.hash);
  let day = arrived || fit.newDay();
  // What goes wrong where nobody expected it is said in words, once, above the form.
  const failed = make("p", { class: "check-problem", role: "alert", hidden: true });
  root.before(failed);
  function admit(words) {
    failed.textContent = words;
    failed.hidden = false;
  }
  const admitFailure = (words) =>
    admit(
      "This page failed (" +
        words +
        "), so what it shows may not be whole. This is a mistake of the program and not yours; please report it, with the address of this page.",
    );
  window.addEventListener("error", (event) => admitFailure(event.message));
  window.addEventListener("unhandledrejection", (event) => admitFailure(String(event.reason)));
  function tellCut(found) {
    if (found === null && /^#(show|day)=/.test(location.hash))
      admit(
        "The address of this page cannot be read, so nothing of the show came with it. It was probably cut on the way: ask for it again, or for the rider file.",
      );
    else failed.hidden = true;
  }
  tellCut(arrived);
  // The script of rider files and plans: asked for once, when something needs it.
  let coming = null,
    hasFiles = false,
    isMissing = false;
  async function withFiles() {
    if (coming === null) coming = loadAll(root.dataset.later.split(" "));
    try {
      await coming;
      hasFiles = true;
      if (isMissing) failed.hidden = true;
      isMissing = false;
    } catch {
      coming = null;
      isMissing = true;
      admit(
        "A part of this page did not load, so rider files, plans and the day's clock cannot be read now. Look at the connection and try again.",
      );
    }
    return hasFiles;
  }
  async function loadAll(addresses) {
    for (const src of addresses)
      await new Promise((done, failed) =>
        document.head.append(make("script", { src, onload: done, onerror: failed })),
      );
  }
  // Whether lines and parts that nothing asks of are hidden: so that a whole rider reads as its answers.
  let lean = arrived !== null;
  // The act in the form, as plain data.
  let data;
  let slots = new Map();
  let serial = 0;

  function make(tag, attributes, ...children) {
    const node = document.createElement(tag);
    for (const [name, value] of Object.entries(attributes || {})) {
      if (name.startsWith("on")) node.addEventListener(name.slice(2), value);
      else if (value !== false && value !== null)
        node.setAttribute(name, value === true ? "" : value);
    }
    node.append(...children);
    return node;
  }

  // A label and its control, tied by an id of our own.
  function field(label, control, wide) {
    serial += 1;
    control.id = "check-" + serial;
    return make(
      "div",
      { class: wide ? "check-field check-wide" : "check-field" },
      make("label", { for: control.id }, label),
      control,
    );
  }

  function input(value, change, more) {
    return make("input", {
      type: "text",
      autocomplete: "off",
      spellcheck: "false",
      maxlength: "240",
      ...more,
      value: value || "",
      oninput: (event) => change(event.target.value),
    });
  }

  function select(value, choices, change) {
    const node = make("select", { onchange: (event) => change(event.target.value) });
    node.append(...options(value, choices));
    return node;
  }

  function options(value, choices) {
    return choices.map(([key, words]) =>
      make("option", { value: key, selected: key === value }, words),
    );
  }

  function tick(label, on, change) {
    const box = make("input", {
      type: "checkbox",
      onchange: (event) => change(event.target.checked),
    });
    box.checked = on;
    return make("label", { class: "check-tick" }, box, " " + label);
  }

  function slot(name) {
    const node = make("div", { class: "check-answer" });
    slots.set(name, node);
    return node;
  }

  // Set or drop one key; the form never keeps an empty one.
  function put(record, key, value) {
    if (value === "" || value === undefined) delete record[key];
    else record[key] = value;
  }

  function part(key) {
    if (data[key] === undefined || typeof data[key] !== "object")
      data[key] = Array.isArray(data[key]) ? data[key] : {};
    return data[key];
  }

  function changedPart(key, change) {
    change(part(key));
    if (Object.keys(data[key]).length === 0) delete data[key];
    refresh();
  }

  function folded(title, key, open, ...children) {
    return make(
      "details",
      { class: "check-part", open, "data-part": key },
      make("summary", {}, make("h2", {}, title), make("span", { class: "check-count" })),
      ...children,
    );
  }

  function build() {
    data = day.acts[day.at].data;
    slots = new Map();
    const open = new Set(
      [...root.querySelectorAll("details[open]")].map((node) => node.dataset.part),
    );
    const opened = (key, filled) => open.has(key) || filled;
    root.replaceChildren(
      top(),
      theWholeDay(opened),
      show(),
      ...departments(opened),
      power(opened),
      hangs(opened),
      stagePlot(opened),
      trucks(opened),
      clock(opened),
      level(opened),
      questions(opened),
      fromFile(),
      outcome(),
    );
    refresh();
  }

  function top() {
    const file = make("input", {
      type: "file",
      multiple: true,
      accept: ".yml,.yaml,text/yaml",
      class: "check-file",
      "aria-label": "Open rider files",
      onchange: (event) => {
        open([...event.target.files]);
        event.target.value = "";
      },
    });
    const several = day.acts.length > 1;
    return make(
      "div",
      { class: "check-top" },
      make(
        "div",
        { class: "check-state", role: "status", "aria-live": "polite", id: "check-state" },
        "The check is loading.",
      ),
      make("div", { id: "check-arrangement", role: "status" }),
      actsBar(several),
      make("ul", {
        class: "check-first",
        id: "check-first",
        "aria-label": "What is short, and what to ask",
      }),
      make(
        "div",
        { class: "check-buttons" },
        make("button", { type: "button", onclick: () => file.click() }, "Open rider files"),
        make(
          "button",
          {
            type: "button",
            onclick: () => {
              fit.addAct(day);
              lean = false;
              build();
              document.getElementById("check-act").focus();
            },
            disabled: day.acts.length >= fit.MOST_ACTS,
          },
          "Add an act",
        ),
        make(
          "button",
          { type: "button", onclick: save },
          several ? "Save this act as rider file" : "Save as rider file",
        ),
        several
          ? make(
              "button",
              {
                type: "button",
                onclick: () => {
                  fit.removeAct(day);
                  build();
                  focusAct();
                },
              },
              "Remove this act",
            )
          : "",
        make("button", { type: "button", onclick: clear }, several ? "Clear all" : "Clear"),
        tick("Only what is asked", lean, (on) => {
          lean = on;
          refresh();
        }),
        file,
      ),
      make("p", { class: "check-note", id: "check-long", role: "status" }),
      make("p", { class: "check-problems", id: "check-problems", role: "alert", hidden: true }),
    );
  }

  // The acts of the day, each with its verdict; one of them is in the form.
  function actsBar(several) {
    const rows = day.acts.map((_, index) =>
      make(
        "li",
        {},
        make("button", {
          type: "button",
          "aria-current": index === day.at ? "true" : false,
          onclick: () => {
            day.at = index;
            build();
            focusAct();
          },
        }),
      ),
    );
    return make(
      "ul",
      { class: "check-acts", id: "check-acts", "aria-label": "Acts of the day", hidden: !several },
      ...rows,
    );
  }

  function focusAct() {
    const here = root.querySelector("#check-acts [aria-current]");
    (day.acts.length > 1 && here ? here : document.getElementById("check-act")).focus();
  }

  // What holds for all acts together, before the form of one of them.
  function theWholeDay(opened) {
    if (day.acts.length === 1) return "";
    return folded(
      "The day, all acts together",
      "day",
      opened("day", true),
      slot("day"),
      make("div", { id: "check-day" }),
    );
  }

  function show() {
    const configuration = select(data.configuration || "", configurations(), (value) => {
      put(data, "configuration", value);
      refresh();
    });
    return make(
      "div",
      { class: "check-row" },
      actField(),
      field(
        "Date it plays",
        input(
          data.plays,
          (value) => {
            put(data, "plays", value);
            refresh();
          },
          { placeholder: "2026-12-05" },
        ),
      ),
      ...spaceField(configuration),
      field("Configuration of the house", configuration),
      field(
        "Stays on deck while others play",
        input(
          data["stays on deck"],
          (value) => {
            put(data, "stays on deck", value);
            refresh();
          },
          { placeholder: "4 m, or 0 m" },
        ),
      ),
      slot("act"),
      slot("plays"),
      slot("stays on deck"),
    );
  }

  // Those of the house; of the space alone where one is chosen.
  function configurations() {
    const chosen = pack.spaces.find((space) => space.name === data.space);
    const names = pack.sections
      .filter((section) => section.key === "house")
      .filter((section) => !chosen || !section.space || section.space === chosen.key)
      .flatMap((section) => section.items)
      .filter((item) => item.kind === "configuration")
      .map((item) => item.name);
    const known = new Set([...names, ...(data.configuration ? [data.configuration] : [])]);
    return [["", "whichever suits best"], ...[...known].map((name) => [name, name])];
  }

  // Only a house of several stages is asked for one.
  function spaceField(configuration) {
    if (pack.spaces.length === 0) return [];
    const names = pack.spaces.map((space) => space.name);
    const known =
      data.space === undefined || names.includes(data.space) ? names : [...names, data.space];
    const choices = [["", "whichever suits best"], ...known.map((name) => [name, name])];
    const chosen = (value) => {
      put(data, "space", value);
      configuration.replaceChildren(...options(data.configuration || "", configurations()));
      refresh();
    };
    return [field("Space", select(data.space || "", choices, chosen))];
  }

  function actField() {
    const node = field(
      "Act",
      input(data.act, (value) => {
        data.act = value;
        refresh();
      }),
    );
    node.lastChild.id = node.firstChild.htmlFor = "check-act";
    return node;
  }

  function departments(opened) {
    const described = pack.sections.map((section) => section.key);
    const keys = [...new Set([...described, ...pack.rules.map((rule) => rule.department)])];
    return keys
      .map((key) => [key, pack.rules.filter((rule) => rule.department === key)])
      .filter(([, rules]) => rules.length > 0)
      .map(([key, rules]) => {
        const section = pack.sections.find((each) => each.key === key);
        const title = section ? section.title : key.slice(0, 1).toUpperCase() + key.slice(1);
        const filled = rules.some((rule) => needOf(rule) !== undefined);
        return folded(title, key, opened(key, filled), ...rules.map(ruleRow));
      });
  }

  // The parts of an act and of its needs, by their keys: what reads some of them is loaded late.
  function partsOf(written) {
    const lines = [written.needs, written.power].flat();
    return [written, ...lines.filter((line) => line instanceof Object)].flatMap(Object.keys);
  }

  function needOf(rule) {
    return (Array.isArray(data.needs) ? data.needs : []).find(
      (need) =>
        need &&
        typeof need.what === "string" &&
        !COMPOSED.some((key) => need[key] !== undefined) &&
        fit.folded(need.what).toLowerCase() === rule.key,
    );
  }

  function ruleRow(rule) {
    const need = needOf(rule) || {};
    const way = rule.ways.find((each) => need[each] !== undefined) || rule.ways[0];
    const state = {
      way,
      first: way === "between" ? (need.between || [])[0] : need[way],
      second: (need.between || [])[1],
      should: need.strictness === "should",
      carried: need["carried by"] === "show",
    };
    const mark = () => row.classList.toggle("check-filled", Boolean(state.first || state.second));
    const change = () => {
      changeNeed(rule, state);
      mark();
      refresh();
    };
    const row = make("fieldset", { class: "check-rule" }, make("legend", {}, rule.title));
    const controls = make("div", { class: "check-controls" });
    if (["permission", "yes"].includes(rule.kind)) {
      const node = select(
        state.first || "",
        [
          ["", "not asked"],
          ["yes", "yes"],
          ["no", "no"],
        ],
        (value) => {
          state.first = value;
          change();
        },
      );
      node.setAttribute("aria-label", rule.title);
      controls.append(node);
    } else {
      const second = input(
        state.second,
        (value) => {
          state.second = value;
          change();
        },
        {
          placeholder: "the most",
          "aria-label": rule.title + ", the most",
          hidden: state.way !== "between",
        },
      );
      if (rule.ways.length > 1) {
        const ways = select(
          state.way,
          rule.ways.map((each) => [each, each]),
          (value) => {
            state.way = value;
            second.hidden = value !== "between";
            change();
          },
        );
        ways.setAttribute("aria-label", rule.title + ", how it is compared");
        controls.append(ways);
      } else controls.append(make("span", { class: "check-way" }, rule.ways[0]));
      controls.append(
        input(
          state.first,
          (value) => {
            state.first = value;
            change();
          },
          { placeholder: EXAMPLES[rule.kind] || "", "aria-label": rule.title },
        ),
        second,
      );
    }
    controls.append(
      tick("only should", state.should, (on) => {
        state.should = on;
        change();
      }),
      tick("we bring it", state.carried, (on) => {
        state.carried = on;
        change();
      }),
    );
    row.append(controls, slot("rule " + rule.key));
    mark();
    return row;
  }

  function changeNeed(rule, state) {
    const needs = Array.isArray(data.needs) ? data.needs : (data.needs = []);
    let need = needOf(rule);
    const filled = Boolean(state.first) || (state.way === "between" && Boolean(state.second));
    if (!filled) {
      if (need !== undefined) needs.splice(needs.indexOf(need), 1);
      if (needs.length === 0) delete data.needs;
      return;
    }
    if (need === undefined) needs.push((need = { what: rule.key }));
    for (const way of ["at least", "at most", "between", "is"]) delete need[way];
    need[state.way] =
      state.way === "between" ? [state.first || "", state.second || ""] : state.first;
    put(need, "strictness", state.should ? "should" : "");
    put(need, "carried by", state.carried ? "show" : need["carried by"] === "hire" ? "hire" : "");
  }

  function power(opened) {
    const loads = Array.isArray(data.power) ? data.power : [];
    const places = [
      ...new Set(
        pack.sections
          .filter((section) => section.key === "stage")
          .flatMap((section) => section.items)
          .filter((item) => item.kind === "place")
          .map((item) => item.name),
      ),
    ];
    const rows = loads.map((load, index) => loadRow(load, index, places));
    const more = make(
      "button",
      {
        type: "button",
        class: "check-more",
        onclick: () => {
          data.power = [...loads, { for: "", current: "" }];
          build();
          focusLast();
        },
      },
      "Add a load",
    );
    return folded("Power, by load", "loads", opened("loads", loads.length > 0), ...rows, more);
  }

  // A hang plan is too much for a form: it comes from a rider file, and its verdicts stand here.
  function hangs(opened) {
    const listed = Array.isArray(data.hangs) ? data.hangs : [];
    const words =
      listed.length > 0
        ? "From the rider file. Change it there, and open it again."
        : "A hang plan is read from a rider file: write it there under hangs, with points or spots, weights and hoists, and open the file above.";
    return folded(
      "Hang plan",
      "hangs",
      opened("hangs", listed.length > 0),
      make("p", { class: "check-note" }, words),
      slot("hangs"),
      ...listed.map((_, index) => slot("hangs " + (index + 1))),
    );
  }

  // The stage plot has no form: a rider file brings it, the page keeps, judges and saves it.
  function stagePlot(opened) {
    const number = Array.isArray(data.plot) ? data.plot.length : 0;
    const told =
      number === 0
        ? "The form has no place for a stage plot. Write it in a rider file, as the guide to riders shows, and open that file here: every rectangle is then checked."
        : number +
          (number === 1 ? " rectangle" : " rectangles") +
          " from the rider file. To change them, change the file and open it again.";
    return folded(
      "Stage plot",
      "plot",
      opened("plot", number > 0),
      make("p", { class: "check-note" }, told),
      slot("plot"),
    );
  }

  function focusLast() {
    const rows = root.querySelectorAll(".check-load input");
    if (rows.length > 0) root.querySelector(".check-load:last-of-type input").focus();
  }

  function loadRow(load, index, places) {
    const text = (key, label, example) =>
      field(
        label,
        input(
          load[key],
          (value) => {
            load[key] = value;
            if (value === "" && !["for", "current"].includes(key)) delete load[key];
            refresh();
          },
          { placeholder: example },
        ),
      );
    const pick = (key, label, choices) =>
      field(
        label,
        select(load[key] || "", choices, (value) => {
          put(load, key, value);
          refresh();
        }),
      );
    const known = load.of && !places.includes(load.of) ? [...places, load.of] : places;
    return make(
      "fieldset",
      { class: "check-load" },
      make("legend", {}, "Load " + (index + 1)),
      make(
        "div",
        { class: "check-row" },
        text("for", "For", "lighting"),
        text("current", "Current, each phase", "125 A"),
        pick("phases", "Phases", [
          ["", "three"],
          ["single", "single"],
        ]),
        text("count", "Circuits, if single", "4"),
        text("system", "System", "230/400 V three phase"),
        text("connector", "Connector", ""),
        text("within", "Within", "25 m"),
        pick("of", "Of, or at", [["", "anywhere"], ...known.map((name) => [name, name])]),
      ),
      make(
        "div",
        { class: "check-controls" },
        tick("apart from dimmers", load["apart from dimmers"] === "yes", (on) => {
          put(load, "apart from dimmers", on ? "yes" : "");
          refresh();
        }),
        tick("only should", load.strictness === "should", (on) => {
          put(load, "strictness", on ? "should" : "");
          refresh();
        }),
        tick("we bring it", load["carried by"] === "show", (on) => {
          put(load, "carried by", on ? "show" : "");
          refresh();
        }),
        make(
          "button",
          {
            type: "button",
            class: "check-more",
            onclick: () => {
              data.power.splice(index, 1);
              if (data.power.length === 0) delete data.power;
              build();
            },
          },
          "Remove load " + (index + 1),
        ),
      ),
      slot("power " + (index + 1)),
    );
  }

  function group(title, key, fields, opened) {
    const record = data[key] !== null && typeof data[key] === "object" ? data[key] : {};
    const row = make(
      "div",
      { class: "check-row" },
      ...fields.map(([name, label, example, choices]) => {
        const change = (value) => changedPart(key, (found) => put(found, name, value));
        return field(
          label,
          choices
            ? select(record[name] || "", choices, change)
            : input(record[name], change, { placeholder: example }),
        );
      }),
    );
    return folded(title, key, opened(key, Object.keys(record).length > 0), row, slot(key));
  }

  function trucks(opened) {
    const lengths = [
      ["", "not said"],
      ...fit.choices(pack, "Trucks", "length of").map((each) => [each, each]),
    ];
    const node = group(
      "Trucks",
      "trucks",
      [
        ["count", "How many", "1"],
        ["length", "Longest", "16.5 m"],
        ["length of", "That length is of", "", lengths],
        ["height", "Highest", "4 m"],
        ["weight", "Heaviest, gross", "40 t"],
      ],
      opened,
    );
    const box =
      data.trucks && typeof data.trucks["largest case"] === "object"
        ? data.trucks["largest case"]
        : {};
    const change = (name) => (value) =>
      changedPart("trucks", (found) => {
        const inner =
          found["largest case"] && typeof found["largest case"] === "object"
            ? found["largest case"]
            : {};
        put(inner, name, value);
        put(found, "largest case", Object.keys(inner).length > 0 ? inner : "");
      });
    node.lastChild.before(
      make(
        "div",
        { class: "check-row" },
        field("Largest case, width", input(box.width, change("width"), { placeholder: "1.2 m" })),
        field(
          "Largest case, height",
          input(box.height, change("height"), { placeholder: "1.9 m" }),
        ),
        field(
          "Largest case, weight",
          input(box.weight, change("weight"), { placeholder: "500 kg" }),
        ),
      ),
    );
    return node;
  }

  function clock(opened) {
    const days = [["", "not said"], ...fit.choices(pack, "Clock", "day").map((day) => [day, day])];
    const node = group(
      "The day's clock",
      "clock",
      [
        ["day", "Day", "", days],
        ["load in", "Load-in", "10:00"],
        ["set up", "Set-up, until the check", "5 h"],
        ["line check", "Line check, if by itself", "20 min"],
        ["check", "Check", "90 min"],
        ["check from", "Check begins, if agreed", "15:00"],
        ["clear after check", "Clear after the check", "15 min"],
        ["doors", "Doors", "19:00"],
        ["on stage", "On stage", "21:00"],
        ["set", "Set", "90 min"],
        ["ends", "Last note ends", "22:30"],
        ["changeover", "Changeover before, all in", "25 min"],
        ["strike", "Strike, until others roll on", "8 min"],
        ["load out", "Load-out", "2 h"],
      ],
      opened,
    );
    const parts =
      data.clock && typeof data.clock["changeover parts"] === "object"
        ? data.clock["changeover parts"]
        : {};
    const change = (name) => (value) =>
      changedPart("clock", (found) => {
        const inner =
          found["changeover parts"] && typeof found["changeover parts"] === "object"
            ? found["changeover parts"]
            : {};
        put(inner, name, value);
        put(found, "changeover parts", Object.keys(inner).length > 0 ? inner : "");
      });
    const of = (name, label, example) =>
      field(label, input(parts[name], change(name), { placeholder: example }));
    node.lastChild.before(
      make(
        "fieldset",
        { class: "check-load" },
        make("legend", {}, "Or the changeover by its parts"),
        make(
          "div",
          { class: "check-row" },
          of("roll on", "Roll on", "4 min"),
          of("patch", "Patch", "3 min"),
          of("lines", "Lines", "24"),
          of("lines a minute", "Lines a minute", "5"),
          field(
            "Lines checked in the set before",
            select(
              parts["lines checked before"] || "",
              [
                ["", "no"],
                ["yes", "yes"],
              ],
              change("lines checked before"),
            ),
          ),
          of("monitors", "Monitors", "4 min"),
          of("spare", "Spare", "3 min"),
        ),
      ),
    );
    if (day.acts.length === 1) node.append(make("div", { id: "check-day" }));
    return node;
  }

  function level(opened) {
    const metrics = [
      ["", "not said"],
      ...fit.choices(pack, "Loudness", "metric").map((metric) => [metric, metric]),
    ];
    const fields = [
      ["at", "Level", "100 dB(A)"],
      ["metric", "How it is measured", "", metrics],
      ["over", "Over what time", "15 min"],
      ["place", "Where", "mix position"],
    ];
    return group("Level of the show", "level", fields, opened);
  }

  function questions(opened) {
    const lines = (Array.isArray(data.questions) ? data.questions : []).join("\n");
    const area = make("textarea", {
      rows: "3",
      maxlength: "4000",
      oninput: (event) => {
        const found = event.target.value
          .split("\n")
          .map((line) => line.trim())
          .filter((line) => line !== "");
        put(data, "questions", found.length > 0 ? found : "");
        refresh();
      },
    });
    area.value = lines;
    return folded(
      "Questions of your own",
      "questions",
      opened("questions", lines !== ""),
      field("One a line", area, true),
    );
  }

  // What a file holds and the form has no place for: needs made of others or written twice, crew, tasks.
  function fromFile() {
    const shown = new Set(pack.rules.map(needOf));
    const rest = (Array.isArray(data.needs) ? data.needs : [])
      .map((need, index) => [need, index])
      .filter(([need]) => !shown.has(need));
    const listed = (key) => (Array.isArray(data[key]) ? data[key] : []);
    const [crew, tasks] = [listed("crew"), listed("tasks")];
    const node = make(
      "section",
      { class: "check-part", hidden: rest.length + crew.length + tasks.length === 0 },
      make("h2", {}, "More from the rider file"),
    );
    for (const [, index] of rest) node.append(slot("needs " + (index + 1)));
    for (const index of crew.keys()) node.append(slot("crew " + (index + 1)));
    for (const index of tasks.keys()) node.append(slot("tasks " + (index + 1)));
    return node;
  }

  function outcome() {
    return make(
      "section",
      { class: "check-outcome" },
      make("h2", { id: "questions" }, TO_THE_HOUSE),
      make("p", { id: "check-none" }, "Nothing to ask yet."),
      ...questionBlock("check-questions", TO_THE_HOUSE),
      make(
        "div",
        { id: "check-to-acts", hidden: true },
        make("h2", { id: "act-questions" }, TO_THE_ACTS),
        ...questionBlock("check-act-questions", TO_THE_ACTS),
      ),
      make("div", { id: "check-cautions" }),
    );
  }

  // Questions to be copied, with a button that copies them.
  function questionBlock(id, label) {
    const area = make("textarea", { rows: "8", readonly: true, id, "aria-label": label });
    const told = make("span", { role: "status", class: "check-told" });
    const onclick = async () => {
      told.textContent = (await copied(area)) ? "Copied." : "Select the text and copy it.";
    };
    const copy = make("button", { type: "button", onclick }, "Copy the questions");
    return [area, make("div", { class: "check-buttons" }, copy, told)];
  }

  async function copied(area) {
    try {
      await navigator.clipboard.writeText(area.value);
      return true;
    } catch {
      area.focus();
      area.select();
      return document.execCommand("copy");
    }
  }

  let pending = 0;
  // The space that the act in the form is judged in; empty in a house of one stage.
  let spaceOfAct = "";
  function refresh() {
    if (engine.fit === undefined) return;
    const planned = (act) => engine.asks_for_plans(partsOf(act.data));
    if (!hasFiles && day.acts.some(planned)) return refreshWithFiles();
    const read = readActs(),
      { rider, problems } = read[day.at];
    const asked = read.map((each) => each.rider);
    if (!hasFiles && engine.needs_more(asked, pack)) return refreshWithFiles();
    const result = engine.fit(pack, asked);
    spaceOfAct = result.acts[day.at].arrangement.space;
    for (const node of slots.values()) node.replaceChildren();
    const apart = engine.several_dates_words(read.map((each) => each.plays));
    const own = judgements(read, result).filter(
      ([, requirement]) => apart === "" || requirement.sort !== "day",
    );
    for (const [found, requirement] of own) answer(requirement, found);
    root.classList.toggle("check-lean", lean && rider.requirements.length > 0);
    theDay(apart === "" ? result.day : []);
    for (const problem of problems) tell(problem);
    actButtons(read, result);
    summary(result, problems, apart);
    first(own);
    asks(result);
    clearTimeout(pending);
    pending = setTimeout(keep, 250);
  }

  function refreshWithFiles() {
    withFiles().then((came) => {
      if (came) refresh();
    });
  }

  // Every act as the check takes it. Only the one in the form can have changed; the others are read once.
  function readActs() {
    const names = fit.actNames(day);
    for (const [index, act] of day.acts.entries()) {
      if (index === day.at || act.read === undefined || act.read.rider.act !== names[index])
        act.read = fit.riderOf(act, names[index], pack);
    }
    return day.acts.map((act) => act.read);
  }

  // The verdicts on the act in the form and on the day, each with what asked for it. Verdicts come act by act, then those of the day.
  function judgements(read, result) {
    const before = read
      .slice(0, day.at)
      .reduce((sum, each) => sum + each.rider.requirements.length, 0);
    const all = read.reduce((sum, each) => sum + each.rider.requirements.length, 0);
    const own = read[day.at].rider.act;
    const slotOfDay = (found) =>
      engine.is_of_date(found) && found.act === own
        ? { slot: "plays", sort: "date" }
        : { slot: day.acts.length > 1 ? "day" : "clock", sort: "day" };
    const ofTheDay = result.verdicts.slice(all).map((found) => [found, slotOfDay(found)]);
    return [
      ...read[day.at].rider.requirements.map((requirement, index) => [
        result.verdicts[before + index],
        requirement,
      ]),
      ...ofTheDay,
    ];
  }

  function actButtons(read, result) {
    for (const [index, row] of [...document.getElementById("check-acts").children].entries()) {
      const { act, verdict } = result.acts[index],
        lost = read[index].problems.length;
      const words = " " + act + (lost > 0 ? ", " + lost + " cannot be read" : "");
      row.firstChild.replaceChildren(
        make("span", { class: "tag check-" + WORDS[verdict] }, verdict),
        words,
      );
    }
  }

  // What is short, then what to ask, each leading to its line of the form.
  function first(own) {
    const found = own.filter(([each]) => ["short", "ask"].includes(each.verdict));
    found.sort(([one], [other]) => engine.gravity(other.verdict) - engine.gravity(one.verdict));
    document.getElementById("check-first").replaceChildren(
      ...found.map(([each, requirement]) => {
        const go = () =>
          lead(slotOf(requirement.slot, MANY.includes(requirement.sort) ? "" : requirement.what));
        return make(
          "li",
          {},
          make(
            "button",
            { type: "button", onclick: go },
            make("span", { class: "tag check-" + WORDS[each.verdict] }, each.verdict),
            " " +
              each.title +
              (each.margin[0] !== "" && each.verdict === "short" ? " " + each.margin[0] : ""),
          ),
        );
      }),
    );
  }

  // The day as a table, each thing as early as it can be.
  function theDay(rows) {
    const heads = [
      ["start", "Start"],
      ["end", "End"],
      ["long", "Long"],
      ["what", "What"],
      ["whose", "Whose"],
    ];
    const table = () =>
      make(
        "div",
        {
          class: "check-scroll",
          tabindex: "0",
          role: "region",
          "aria-label": "The day as a table",
        },
        make(
          "table",
          { class: "check-table" },
          make(
            "thead",
            {},
            make("tr", {}, ...heads.map(([, words]) => make("th", { scope: "col" }, words))),
          ),
          make(
            "tbody",
            {},
            ...rows.map((row) => make("tr", {}, ...heads.map(([key]) => make("td", {}, row[key])))),
          ),
        ),
      );
    const node = document.getElementById("check-day");
    node.replaceChildren(
      ...(rows.length === 0 ? [] : [make("h3", {}, "Each thing as early as it can be"), table()]),
    );
  }

  function lead(node) {
    if (node === null) return;
    const part = node.closest("details");
    if (part !== null) part.open = true;
    const here = node.closest("fieldset") || part || node;
    here.scrollIntoView({ block: "center" });
    // What is asked, and not how it is compared, which stands before it.
    const control =
      here.querySelector("input, select:not([aria-label$='how it is compared']), textarea") ||
      here.querySelector("summary");
    if (control !== null) control.focus({ preventScroll: true });
  }

  function slotOf(name, what) {
    const need = /^needs (\d+)$/.exec(name);
    const written = need ? data.needs[Number(need[1]) - 1] : null;
    const key =
      what ||
      (written && typeof written.what === "string" ? fit.folded(written.what).toLowerCase() : "");
    const rule = slots.get("rule " + key);
    return (rule && written && needOf({ key }) === written ? rule : slots.get(name)) || null;
  }

  // What the house says of a stage, by the name of its space.
  function stageOf(name) {
    const space = pack.spaces.find((each) => each.name === name);
    const key = space === undefined ? undefined : space.key;
    return pack.sections.find((each) => each.key === "stage" && each.space === key);
  }

  function answer(requirement, found) {
    const node = slotOf(requirement.slot, MANY.includes(requirement.sort) ? "" : requirement.what);
    if (node === null) return;
    const named =
      [...MANY, "hang", "trim", "call", "task"].includes(requirement.sort) ||
      ["clock", "day", "plays"].includes(requirement.slot);
    const head = make(
      "p",
      { class: "check-verdict" },
      make("span", { class: "tag check-" + WORDS[found.verdict] }, found.verdict),
      named ? " " + found.title + ", " + found.need + ". " : " ",
      found.reason,
    );
    const margin = found.margin.filter((each) => each !== "");
    if (margin.length > 0)
      head.append(" ", make("span", { class: "check-margin" }, margin.join(" / ")));
    node.append(head, ...details(found));
    const drawing =
      requirement.sort === "plot" ? fit.plotDrawing(stageOf(spaceOfAct), requirement, found) : null;
    if (drawing !== null) node.append(drawing);
    for (const part of [...found.parts].sort(
      (one, other) => engine.gravity(other.verdict) - engine.gravity(one.verdict),
    ))
      node.append(partOf(found, part));
  }

  // The house's fact, notes and remedy of an answer.
  function details(found) {
    const nodes = found.fact !== null ? [fact(found.fact)] : [];
    for (const note of found.notes) nodes.push(make("p", { class: "check-note" }, note));
    if (found.remedy !== "")
      nodes.push(
        make(
          "p",
          { class: "check-note" },
          "What would mend it: " + found.remedy + " Who could: " + found.who + ".",
        ),
      );
    return nodes;
  }

  // The parts of an answer, the gravest first, each with its own fact, notes and remedy; a fact that stands above is not told again.
  function partOf(whole, part) {
    const margin = part.margin.filter((each) => each !== "").join(" / ");
    const node = make(
      "div",
      { class: "check-within" },
      make(
        "p",
        { class: "check-verdict" },
        make("span", { class: "tag check-" + WORDS[part.verdict] }, part.verdict),
        " ",
        make("strong", {}, part.title),
        ", " + part.need + ". " + part.reason + " ",
        ...(margin !== "" ? [make("span", { class: "check-margin" }, margin)] : []),
      ),
    );
    node.append(
      ...details(
        JSON.stringify(part.fact) === JSON.stringify(whole.fact) ? { ...part, fact: null } : part,
      ),
    );
    return node;
  }

  function fact(found) {
    const shown =
      found.text !== ""
        ? found.text + (found.also !== "" ? " (" + found.also + ")" : "")
        : found.standing;
    const words = found.item + ", " + found.label + ": " + shown;
    const link = /^[a-z0-9-]+\.html(#[a-z0-9-]*)?$/.test(found.page)
      ? make("a", { href: found.page }, words)
      : words;
    return make(
      "p",
      { class: "check-fact" },
      link,
      found.checked !== "" ? " Checked " + found.checked + "." : "",
    );
  }

  function tell(problem) {
    const node = slotOf(problem.where);
    if (node !== null)
      node.append(make("p", { class: "check-problem" }, "Cannot be read: " + problem.reason + "."));
  }

  function summary(result, problems, apart) {
    const parts = engine.count_words(result.verdicts.map((found) => found.verdict));
    const state = document.getElementById("check-state");
    const words = parts.join(" · ");
    const unread = problems.length > 0 ? problems.length + " cannot be read" : "";
    const line = [words, unread].filter((each) => each !== "").join(" · ");
    const whole = day.acts.length > 1 && line !== "" ? "The day: " : "";
    if (apart !== "") state.replaceChildren(apart);
    else
      state.replaceChildren(
        whole,
        ...(line === ""
          ? [
              "Nothing is asked yet. Fill in what you need, or open rider files, one for each act of the day.",
            ]
          : [
              ...(parts.length > 0
                ? [
                    make("span", { class: "tag check-" + WORDS[result.verdict] }, result.verdict),
                    " ",
                  ]
                : []),
              line,
            ]),
      );
    // In which arrangement of the house it is judged, and how the others fare.
    document
      .getElementById("check-arrangement")
      .replaceChildren(
        ...(apart === "" && parts.length > 0 ? result.judged_in : []).map((words) =>
          make("p", { class: "check-note" }, words),
        ),
      );
    for (const node of root.querySelectorAll("details")) {
      const inside = node.querySelectorAll(".check-verdict").length;
      node.classList.toggle(
        "check-none",
        inside === 0 && node.querySelector(".check-problem") === null,
      );
      node.querySelector(".check-count").textContent =
        inside === 0 ? "" : inside === 1 ? "1 answer" : inside + " answers";
    }
    const same = engine.same_name_words(fit.writtenNames(day));
    const lost = problems
      .filter((problem) => slotOf(problem.where) === null)
      .map((problem) => problem.reason);
    say(
      [apart, same, lost.length > 0 ? "Cannot be read: " + lost.join("; ") + "." : ""]
        .filter((each) => each !== "")
        .join(" "),
    );
  }

  function say(words) {
    const node = document.getElementById("check-problems");
    node.textContent = words;
    node.hidden = words === "";
  }

  function asks(result) {
    const toHouse = result.questions.map((group) => ({
      head: group.department.slice(0, 1).toUpperCase() + group.department.slice(1),
      questions: group.questions,
    }));
    const toActs = result.act_questions.map((group) => ({
      head: group.act,
      questions: group.questions,
    }));
    const area = listed("check-questions", toHouse);
    const none = toHouse.length === 0;
    document.getElementById("check-none").hidden = !none;
    area.hidden = none;
    area.nextElementSibling.hidden = none;
    listed("check-act-questions", toActs);
    document.getElementById("check-to-acts").hidden = toActs.length === 0;
    document
      .getElementById("check-cautions")
      .replaceChildren(
        ...[...result.cautions, pack.caution].map((words) =>
          make("p", { class: "check-caution" }, words),
        ),
      );
  }

  function listed(id, groups) {
    const area = document.getElementById(id);
    const lines = groups.flatMap(({ head, questions }) => [
      head,
      ...questions.map((words) => "- " + words),
      "",
    ]);
    area.value = lines.join("\n").trimEnd();
    return area;
  }

  // What was written stays in the page's own address, so that it can be sent to a colleague.
  function keep() {
    const kept = fit.addressOf(day);
    try {
      history.replaceState(
        null,
        "",
        location.protocol === "file:"
          ? location.href.split("#")[0] + kept
          : location.pathname + location.search + kept,
      );
    } catch {
      if (kept !== "") location.hash = kept;
    }
    const long = document.getElementById("check-long");
    const words =
      kept.length > fit.LONG_ADDRESS
        ? "The address of this page has " +
          engine.digits(kept.length, 0) +
          " characters by now. Many mail programs cut one so long: send the rider files."
        : "";
    if (long.textContent !== words) long.textContent = words;
  }

  // Each file is an act; what cannot be read is told, and the others are taken.
  async function open(files) {
    if (!(await withFiles())) return;
    const refused = [];
    for (const file of files) {
      try {
        const found = fit.openRider(await file.text());
        fit.takeIn(day, found.data, found.places);
      } catch (failure) {
        if (!(failure instanceof fit.Refused)) throw failure;
        refused.push(file.name + " was not opened. " + failure.message);
      }
    }
    if (refused.length < files.length) {
      lean = true;
      build();
    }
    if (refused.length > 0) say(refused.join(" "));
  }

  async function save() {
    if (!(await withFiles())) return;
    const address = URL.createObjectURL(
      new Blob([fit.writeRider({ ...data, act: data.act || "Name of the act" })], {
        type: "text/yaml",
      }),
    );
    make("a", { href: address, download: "rider.yml" }).click();
    setTimeout(() => URL.revokeObjectURL(address), 10000);
  }

  function clear() {
    day = fit.newDay();
    lean = false;
    build();
  }

  for (const name of ["dragover", "drop"]) {
    root.addEventListener(name, (event) => {
      event.preventDefault();
      if (name === "drop") open([...event.dataTransfer.files]);
    });
  }
  window.addEventListener("hashchange", () => {
    const found = fit.fromAddress(location.hash);
    tellCut(found);
    if (found !== null) {
      day = found;
      lean = true;
      build();
    }
  });
  build();
  // The check's script runs after this one and before the page counts as loaded.
  document.addEventListener("DOMContentLoaded", () => {
    if (engine.fit === undefined)
      admit(
        "The check did not load, so no verdict can be given. Look at the connection and open this page again.",
      );
    else refresh();
  });
})((window.housefit = window.housefit || {}));
