// The page's side of the lessons, and the course's own part of JupyterLab.

import js from "@eslint/js";
import globals from "globals";

export default [
  // Made from what is looked at here.
  { ignores: ["corsetkit/teaching/page/built/"] },
  js.configs.recommended,
  { linterOptions: { reportUnusedDisableDirectives: "error" } },
  { files: ["corsetkit/teaching/page/*.js", "tests/benchmarks/*.js"], languageOptions: { globals: globals.browser } },
  // Lab loads its extensions as scripts, no modules.
  { files: ["corsetkit/setup/lab_extension/**/*.js"], languageOptions: { globals: globals.browser, sourceType: "script" } },
  { files: ["tests/page/*.js"], languageOptions: { globals: globals.node } },
];
