// The linter's rules for the pages' scripts; the test copies them beside the scripts.

import js from "@eslint/js";
import globals from "globals";

/** Ways to put text into a page as markup; on these pages text only ever becomes text nodes. */
const MARKUP = ["innerHTML", "outerHTML", "insertAdjacentHTML", "setHTMLUnsafe", "parseFromString", "createContextualFragment"];

export default [
  js.configs.recommended,
  {
    languageOptions: { ecmaVersion: 2024, sourceType: "module", globals: globals.browser },
    linterOptions: { reportUnusedDisableDirectives: "error" },
    rules: {
      "array-callback-return": "error",
      "consistent-return": "error",
      "default-case-last": "error",
      eqeqeq: "error",
      "no-alert": "error",
      "no-console": ["error", { allow: ["error"] }],
      "no-duplicate-imports": "error",
      "no-else-return": "error",
      "no-eval": "error",
      "no-implicit-coercion": "error",
      "no-implied-eval": "error",
      "no-lonely-if": "error",
      "no-new-func": "error",
      "no-param-reassign": "error",
      "no-promise-executor-return": "error",
      "no-restricted-properties": ["error", ...MARKUP.map((property) => ({ property }))],
      "no-return-assign": "error",
      "no-script-url": "error",
      "no-self-compare": "error",
      "no-shadow": "error",
      "no-template-curly-in-string": "error",
      "no-throw-literal": "error",
      "no-undef-init": "error",
      "no-unused-expressions": "error",
      "no-use-before-define": ["error", { functions: false, variables: false }],
      "no-useless-concat": "error",
      "no-useless-return": "error",
      "no-var": "error",
      "object-shorthand": "error",
      "prefer-const": "error",
      "prefer-template": "error",
      "require-await": "error",
    },
  },
];
