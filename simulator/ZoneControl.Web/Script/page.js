// The little that the page needs of the browser: moving strokes, the pointer over the lanes, keeping, saving, printing.
"use strict";
window.zonecontrol = (() => {
  const calm = window.matchMedia("(prefers-reduced-motion: reduce)");

  // Strokes move with the flow, in drawing units a second; where the system asks for no motion they stand still.
  const places = new WeakMap();
  let last = performance.now();
  const move = (now) => {
    const passed = Math.min(0.1, (now - last) / 1000);
    last = now;
    if (!calm.matches && !document.hidden) {
      for (const stroke of document.querySelectorAll(".pipe-flow")) {
        const speed = Number(stroke.dataset.flow) || 0;
        const place = ((places.get(stroke) || 0) + speed * passed) % 24;
        places.set(stroke, place);
        stroke.style.strokeDashoffset = String(-place);
      }
    }
    requestAnimationFrame(move);
  };
  requestAnimationFrame(move);

  const lanesOf = (area, event) => {
    for (const drawing of area.querySelectorAll("svg.stretch")) {
      const box = drawing.getBoundingClientRect();
      if (event.clientX >= box.left && event.clientX <= box.right && event.clientY >= box.top && event.clientY <= box.bottom)
        return (event.clientX - box.left) / box.width;
    }
    return null;
  };

  return {
    kept: (key) => { try { return localStorage.getItem(key); } catch { return null; } },
    keep: (key, value) => { try { localStorage.setItem(key, value); } catch { /* a browser that keeps nothing */ } },
    focus: (id) => document.getElementById(id)?.focus(),
    print: () => window.print(),
    save: (name, text) => {
      const link = document.createElement("a");
      link.href = URL.createObjectURL(new Blob([text], { type: "application/toml" }));
      link.download = name;
      link.click();
      setTimeout(() => URL.revokeObjectURL(link.href), 10000);
    },
    goToLine: (id, line) => {
      const box = document.getElementById(id);
      if (!box) return;
      const lines = box.value.split("\n");
      let start = 0;
      for (let i = 0; i < line - 1 && i < lines.length; i++) start += lines[i].length + 1;
      box.focus();
      box.setSelectionRange(start, start + (lines[line - 1] || "").length);
      box.scrollTop = Math.max(0, (line - 4) * (box.scrollHeight / Math.max(1, lines.length)));
    },
    watchLanes: (area, page) => {
      let due = 0;
      area.addEventListener("pointermove", (event) => {
        const share = lanesOf(area, event);
        const now = performance.now();
        if (share === null || now < due) return;
        due = now + 120;
        page.invokeMethodAsync("Point", share).catch(() => { });
      });
      area.addEventListener("keydown", (event) => {
        if (["ArrowLeft", "ArrowRight", "Home", "End"].includes(event.key)) event.preventDefault();
      });
    },
  };
})();
