// The course's own part of JupyterLab: a lesson runs as it opens, and again when its kernel has started anew; the page
// stays where it is read.
//
// Written by hand in the form in which Lab loads what was built for it: an object of two functions, to which
// Lab gives its own modules. Where something is missing (another Lab), nothing is added and Lab is left as it is.
"use strict";
(() => {
  const NAME = "corsetkit-lessons";
  const COMMAND = "corsetkit:run-lesson";
  const LABEL = "Run this lesson";
  const OF_A_LESSON = "from corsetkit.teaching import lesson";
  // Milliseconds: for a kernel that starts; for one on its way before it is restarted; for a drawing to be there.
  const TO_START = 60000, TO_COME_BACK = 15000, TO_DRAW = 5000, LOOK_AGAIN = 50;
  // So often a lesson begins again by itself without once coming to its end: what ends the kernel each time is not
  // asked for without end.
  const AGAIN_AT_MOST = 3;

  let lent = {};

  async function lentModule(name) {
    const versions = Object.values(lent[name] || {});
    const one = versions.find((version) => version.loaded) || versions[0];
    if (!one) throw new Error(`${name} is not in this Lab`);
    return (await one.get())();
  }

  const pause = (ms) => new Promise((done) => setTimeout(done, ms));

  async function until(holds, patience) {
    for (const end = Date.now() + patience; !holds(); await pause(LOOK_AGAIN)) if (Date.now() > end) return false;
    return true;
  }

  const isCode = (cell) => cell.model.type === "code";

  /** A lesson of the course: every code cell asks for a lesson. Any other notebook is left alone. */
  function isLesson(panel) {
    const code = panel.content.widgets.filter(isCode);
    return code.length > 0 && code.every((cell) => cell.model.sharedModel.getSource().startsWith(OF_A_LESSON));
  }

  /** What somebody may have written into the page: its cells, without what running adds to them. */
  const wordsOf = (panel) => JSON.stringify(
    panel.content.widgets.map(({ model }) => [model.type, model.sharedModel.getSource()]));

  // The kernel, by way of the notebook's session

  const kernelOf = (session) => (session.session ? session.session.kernel : null);

  function answers(session) {
    const kernel = session.isDisposed || session.isRestarting ? null : kernelOf(session);
    return Boolean(kernel) && kernel.connectionStatus === "connected" && ["idle", "busy"].includes(kernel.status);
  }

  const isGone = (session) => session.isDisposed || !kernelOf(session) || kernelOf(session).status === "dead";

  /** Wait for a kernel that starts; whether it answers. */
  async function comes(session) {
    await Promise.race([session.ready, pause(TO_START)]);
    return until(() => answers(session), TO_START);
  }

  /** As `comes`, but a kernel that is gone, or does not come, is started anew and without a question. */
  async function broughtBack(session, services) {
    await Promise.race([session.ready, pause(TO_START)]);
    await services.sessions.refreshRunning(); // one that was ended from outside is missed only now
    await until(() => answers(session) || isGone(session), TO_COME_BACK);
    if (answers(session)) return true;
    if (session.isDisposed) return false;
    if (kernelOf(session)) await session.restartKernel();
    else if (await session.startKernel()) return false; // there is none to choose
    return until(() => answers(session), TO_START);
  }

  // The page

  /** Keeps what is read where it stands, while the cells above and below give way to their new outputs. */
  class Bookmark {
    constructor(notebook) {
      this.page = notebook.node.querySelector(".jp-WindowedPanel-outer") || notebook.node;
      this.cells = notebook.widgets.map((cell) => cell.node);
      // An output is taken away before the next is there: until then its place is kept open.
      this.held = notebook.widgets.filter(isCode).map((cell) => {
        const room = cell.outputArea.node, height = room.getBoundingClientRect().height;
        room.parentElement.style.minHeight = `${height}px`;
        return { room, height };
      });
      this.scrolled = () => { if (this.page.scrollTop !== this.put) this.mark(); };
      this.page.addEventListener("scroll", this.scrolled);
      this.watch = new ResizeObserver(() => this.keep());
      this.cells.forEach((cell) => this.watch.observe(cell));
      this.mark();
    }

    above(cell) {
      return cell.getBoundingClientRect().top - this.page.getBoundingClientRect().top;
    }

    mark() {
      const top = this.page.getBoundingClientRect().top;
      // At the very top the page stays by itself.
      this.cell = this.page.scrollTop > 0 && this.cells.find((cell) => cell.getBoundingClientRect().bottom > top);
      this.at = this.cell ? this.above(this.cell) : 0;
    }

    keep() {
      if (!this.cell || !this.cell.isConnected) return;
      const moved = this.above(this.cell) - this.at;
      if (Math.abs(moved) >= 1) this.page.scrollTop += moved;
      this.put = this.page.scrollTop;
    }

    /** Once each output has come back to something like its height, or will not. */
    async release() {
      const tall = ({ room, height }) => {
        const now = [...room.children].reduce((sum, child) => sum + child.offsetHeight, 0);
        return !room.isConnected || now >= 0.7 * height;
      };
      await until(() => this.ended || this.held.every(tall), TO_DRAW);
      this.letGo();
      await pause(LOOK_AGAIN); // the last change of size is still answered
      this.end();
    }

    letGo() {
      if (this.ended) return;
      for (const { room } of this.held) if (room.parentElement) room.parentElement.style.minHeight = "";
    }

    end() {
      this.letGo();
      this.ended = true;
      this.watch.disconnect();
      this.page.removeEventListener("scroll", this.scrolled);
    }
  }

  // Running

  class Lessons {
    constructor(app, tracker, CodeCell) {
      Object.assign(this, { app, tracker, CodeCell });
      this.opened = new WeakSet(); // what has run as it opened
      this.words = new WeakMap(); // the lessons' words as they were opened
      this.runs = new WeakMap(); // how often each page has run
      this.bookmarks = new WeakMap();
      this.stale = new WeakSet(); // pages whose kernel has started anew since they ran
      this.tries = new WeakMap(); // how often each has begun again since it last came to its end
    }

    /** Run once the kernel is there; a run begun meanwhile by another press serves this one too. */
    async run(panel, kernelIsThere) {
      const begun = () => this.runs.get(panel) || 0;
      // A kernel that ended on the way, or before Lab had noticed, is tried once more.
      for (let attempt = 0; attempt < 2; attempt++) {
        const before = begun();
        if (!(await kernelIsThere(panel.sessionContext)) || panel.isDisposed || begun() !== before) return;
        this.runs.set(panel, before + 1);
        this.stale.delete(panel);
        if (await this.runCells(panel) || panel.isDisposed || begun() !== before + 1) return;
      }
    }

    /** Whether every cell was answered. */
    async runCells(panel) {
      const { content: notebook, sessionContext: session, context } = panel;
      if (this.bookmarks.has(panel)) this.bookmarks.get(panel).end();
      const bookmark = new Bookmark(notebook);
      this.bookmarks.set(panel, bookmark);
      const ran = await Promise.all(notebook.widgets.map((cell) => this.runCell(cell, session)));
      if (ran.includes(false) || panel.isDisposed) {
        bookmark.end();
        return false;
      }
      this.tries.delete(panel);
      // What a lesson shows once it has run is nobody's work: no question about saving it when the page is left.
      if (this.words.get(context) === wordsOf(panel)) context.model.dirty = false;
      await bookmark.release();
      // Said on the page, for whoever wants to know: the tests do.
      const { dataset } = panel.node;
      dataset.lessonRuns = Number(dataset.lessonRuns || 0) + 1;
      return true;
    }

    async runCell(cell, session) {
      if (cell.model.type === "markdown") cell.rendered = true;
      try {
        if (isCode(cell)) await this.CodeCell.execute(cell, session);
        return true;
      } catch (error) {
        // A kernel that ends takes its questions with it, and so does a second run.
        if (!String(error.message).startsWith("Canceled")) console.warn(NAME, error);
        return false;
      }
    }

    pressed() {
      const panel = this.tracker.currentWidget;
      this.tries.delete(panel);
      return panel ? this.run(panel, (session) => broughtBack(session, this.app.serviceManager)) : undefined;
    }

    /** Look after a lesson's kernel, and after its words. */
    watch(panel) {
      const { sessionContext: session, context } = panel;
      session.statusChanged.connect((_, status) => {
        // The page says itself what happens and goes on by itself; Lab would lay a question about a kernel over it. This
        // is how Lab remembers that it has asked; where another Lab does not, it asks.
        if (status === "restarting") panel._autorestarting = true;
        if (["restarting", "autorestarting"].includes(status)) quietly(() => this.startsAnew(panel));
      });
      session.kernelChanged.connect((_, { newValue }) => { if (newValue) quietly(() => this.startsAnew(panel)); });
      // What is saved is no longer somebody's unsaved work, however it differs from what was opened.
      context.saveState.connect((_, state) => {
        if (state.startsWith("completed")) this.words.set(context, wordsOf(panel));
      });
    }

    /** A kernel that starts anew knows nothing of the page: the lesson is asked for again, once it is looked at. */
    async startsAnew(panel) {
      if (this.stale.has(panel)) return;
      this.stale.add(panel);
      if (panel.isVisible) await this.runStale(panel);
    }

    async runStale(panel) {
      const tries = (this.tries.get(panel) || 0) + 1;
      this.tries.set(panel, tries);
      if (tries <= AGAIN_AT_MOST) await this.run(panel, comes);
    }

    /** A notebook came to the front: a lesson that has not run yet does so now. */
    async cameToTheFront(panel) {
      if (panel && this.stale.has(panel)) await this.runStale(panel);
      if (!panel || this.opened.has(panel.context)) return;
      this.opened.add(panel.context);
      const isFirst = !this.first;
      this.first = this.first || panel;
      await panel.context.ready;
      if (panel.isDisposed || !isLesson(panel)) return;
      this.words.set(panel.context, wordsOf(panel));
      this.watch(panel);
      if (isFirst) quietly(() => this.clearTheSides());
      await this.run(panel, comes);
    }

    /** Lab opened on a lesson: what stands beside the page goes, once; who opens it again keeps it. */
    async clearTheSides() {
      const { restored, shell } = this.app;
      await restored;
      if (shell.collapseLeft) shell.collapseLeft();
      if (shell.collapseRight) shell.collapseRight();
      // Nothing for a learner stands at the right edge; the menu View brings it back.
      if (shell.isSideTabBarVisible && shell.isSideTabBarVisible("right")) shell.toggleSideTabBarVisibility("right");
    }
  }

  /** No trouble of ours becomes Lab's: the menu still runs all cells. */
  const quietly = (work) => Promise.resolve().then(work).catch((error) => console.warn(NAME, error));

  function activate(app, tracker, CodeCell) {
    const lessons = new Lessons(app, tracker, CodeCell);
    app.commands.addCommand(COMMAND, {
      label: LABEL,
      caption: "Run the whole lesson; the page stays where it is",
      execute: () => quietly(() => lessons.pressed()),
    });
    tracker.currentChanged.connect((_, panel) => { quietly(() => lessons.cameToTheFront(panel)); });
    quietly(() => lessons.cameToTheFront(tracker.currentWidget));
  }

  async function plugins() {
    try {
      const { INotebookTracker } = await lentModule("@jupyterlab/notebook");
      const { CodeCell } = await lentModule("@jupyterlab/cells");
      if (!INotebookTracker || !CodeCell) return [];
      return [{
        id: `${NAME}:opening`,
        description: "Runs a lesson as it opens and as its kernel starts anew; keeps the page where it is read.",
        autoStart: true,
        optional: [INotebookTracker],
        activate: (app, tracker) => { if (tracker) quietly(() => activate(app, tracker, CodeCell)); },
      }];
    } catch (error) {
      console.warn(NAME, error);
      return [];
    }
  }

  window._JUPYTERLAB = window._JUPYTERLAB || {};
  window._JUPYTERLAB[NAME] = {
    init: (scope) => { lent = scope || {}; },
    get: async () => {
      const made = await plugins();
      return () => ({ __esModule: true, default: made });
    },
  };
})();
