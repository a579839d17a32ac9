// A page opened from a folder may not start a worker. There the search runs in an empty frame of the same page instead.
if (location.protocol === "file:") {
  window.Worker = class extends EventTarget {
    constructor(address) {
      super();
      this.waiting = [];
      this.frame = document.createElement("iframe");
      this.frame.hidden = true;
      this.frame.title = "Search";
      document.body.append(this.frame);
      const inside = this.frame.contentWindow;
      inside.postMessage = (data) => this.dispatchEvent(new MessageEvent("message", { data }));
      const script = inside.document.createElement("script");
      script.src = String(address);
      script.onload = () => this.start(inside);
      inside.document.head.append(script);
    }
    start(inside) {
      this.postMessage = (data) => inside.dispatchEvent(new inside.MessageEvent("message", { data }));
      this.waiting.forEach((data) => this.postMessage(data));
    }
    postMessage(data) {
      this.waiting.push(data);
    }
  };
}
