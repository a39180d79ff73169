import tseslint from "typescript-eslint";

export default tseslint.config(
  { ignores: ["**/*.mjs"] },
  ...tseslint.configs.recommendedTypeChecked,
  {
    files: ["src/**/*.ts", "tests/**/*.ts"],
    languageOptions: { parserOptions: { projectService: true } },
    rules: {
      "@typescript-eslint/no-non-null-assertion": "off",
      "@typescript-eslint/no-unused-vars": "error",
      "@typescript-eslint/switch-exhaustiveness-check": ["error", { considerDefaultExhaustiveForUnions: true }],
      "no-console": "error",
      // the grid library and office.js compare with plain values of their enumerations
      "@typescript-eslint/no-unsafe-enum-comparison": "off",
      eqeqeq: "error",
      "no-restricted-globals": ["error", { name: "alert", message: "Say it in the pane." }, { name: "confirm", message: "Ask in the pane." }],
      "no-restricted-properties": ["error", { property: "innerHTML", message: "Text goes in as text: use textContent or element()." }],
    },
  },
  {
    // the metadata generator reads no other type for a table of numbers and text
    files: ["src/functions/**"],
    rules: { "@typescript-eslint/no-explicit-any": "off" },
  },
  {
    files: ["tests/**"],
    rules: {
      "no-restricted-syntax": [
        "error",
        {
          selector: "CallExpression[callee.object.name='fc'][callee.property.name=/^(assert|check|sample)$/]:not([arguments.1.type='CallExpression']):not([arguments.1.properties.0.key.name='seed'])",
          message: "Give it a seed, or it fails now and then: { seed: SEED } of support/fuzz.",
        },
      ],
    },
  },
  { files: ["src/commandline/**", "tests/**"], rules: { "no-console": "off" } },
);
