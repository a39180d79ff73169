/**
 * The list of trials, and what a row says.
 */
import type { BatchInputs } from "../../../src/cellar/batch/fields";
import { planBatch } from "../../../src/cellar/batch/plan";
import { benchRow, type BenchRow } from "../../../src/cellar/batch/what-if";
import { MOST_TRIALS, Trials } from "../../../src/taskpane/bench/trials";
import { factsOf, glassText, refusalInWords } from "../../../src/taskpane/bench/words";
import { changed } from "../../cellar/batch/worked-batch";
import { asRead } from "../variants/reader";
import { inputsOf } from "../../support/samples";

const form = (dosage: Record<string, unknown> = {}, disgorging: Record<string, unknown> = {}): BatchInputs =>
  inputsOf(changed({ dosage: { kind: "concentrate", ...dosage }, disgorging }));

describe("the list", () => {
  const levels = (trials: Trials) => trials.list.map(({ targetGL }) => targetGL);
  const at = (trials: Trials, level: number) => trials.list.find(({ targetGL }) => targetGL === level)!;
  const filled = (target_gL = 8) => {
    const trials = new Trials();
    trials.follow(form({ target_gL }));
    return trials;
  };

  test("is the usual trials with the form's own among them", () => {
    const trials = filled();
    expect(levels(trials)).toEqual([1.5, 4.5, 8, 14.5]);
    expect(trials.list.filter((each) => trials.isWanted(each)).map(({ targetGL }) => targetGL)).toEqual([8]);
  });

  test("follows the form while nobody changed it, and keeps its rows", () => {
    const trials = filled();
    const { id } = at(trials, 14.5);
    trials.follow(form({ target_gL: 20 }));
    expect(levels(trials)).toEqual([1.5, 4.5, 9, 14.5, 20, 41]);
    expect(at(trials, 14.5).id).toBe(id);
  });

  test("once changed it stays, but for the sweetness that the form wants", () => {
    const trials = filled();
    trials.remove(at(trials, 14.5).id);
    trials.setTarget(at(trials, 4.5).id, 6);
    trials.follow(form({ target_gL: 10 }));
    expect(levels(trials)).toEqual([1.5, 6, 10]);
    trials.follow(form({ target_gL: 6 }));
    expect(levels(trials)).toEqual([1.5, 6]);
    expect(trials.isWanted(at(trials, 6))).toBe(true);
    trials.follow(form({ target_gL: 7 }));
    expect(levels(trials)).toEqual([1.5, 6, 7]);
  });

  test("what was noted stays with its sweetness, whatever the form wants", () => {
    const trials = filled();
    trials.setNote(at(trials, 8).id, "round");
    trials.follow(form({ target_gL: 30 }));
    expect(at(trials, 8).note).toBe("round");
    trials.setNote(at(trials, 4.5).id, "sharp");
    trials.restart(form({ target_gL: 2 }));
    expect(levels(trials)).toEqual([2, 4.5, 8]);
    expect(at(trials, 4.5).note).toBe("sharp");
  });

  test("holds twelve, the thirteenth is refused", () => {
    const trials = filled();
    for (let added = trials.list.length; added < MOST_TRIALS; added += 1) expect(trials.add()).toBeDefined();
    expect(trials.add()).toBeUndefined();
    expect(trials.list).toHaveLength(12);
    trials.remove(trials.list[0]!.id);
    expect(trials.add()).toBeDefined();
  });

  test("a trial to be filled in comes last, and stays empty", () => {
    const trials = filled();
    trials.add();
    trials.follow(form({ target_gL: 9 }));
    expect(levels(trials)).toEqual([1.5, 4.5, 9, 14.5, null]);
  });

  test("the usual again drops what was added", () => {
    const trials = filled();
    trials.setTarget(trials.add()!.id, 11);
    trials.restart(form());
    expect(levels(trials)).toEqual([1.5, 4.5, 8, 14.5]);
  });

  test("without dosage there is nothing to try but zero, and it comes back with the dosage", () => {
    const trials = filled();
    trials.follow(form({ kind: "none" }));
    expect(levels(trials)).toEqual([]);
    trials.follow(form());
    expect(levels(trials)).toEqual([1.5, 4.5, 8, 14.5]);
  });
});

describe("what a row says", () => {
  const row = (inputs: BatchInputs) => benchRow(inputs, planBatch(inputs).tirage) as BenchRow;
  const says = (inputs: BatchInputs) =>
    Object.fromEntries(
      factsOf(inputs, row(inputs)).map(({ label, value, isHindrance }) => [
        label,
        isHindrance ? `! ${value}` : value,
      ]),
    );

  test("by hand: 10 mL of 600 g/L and 12 % vol a bottle, 13 400 bottles, 5 % reserve", () => {
    const inputs = form({ stock_L: 150 });
    // 100·8/600 mL; 10 + 24/16.83 % vol at tirage, nearly none of it from 10 mL
    expect(glassText(row(inputs))).toBe(asRead("1.33 mL"));
    expect(says(inputs)).toEqual({
      "Liqueur a bottle": asRead("10.00 mL"),
      "Sugar as analysed": asRead("8.00 g/L"),
      "Terms permitted": "brut",
      "Alcohol after dosage": expect.stringMatching(/^11\D\d\d % vol$/u) as string,
      "Room in the neck": asRead("Fits; 10.00 mL to fill up"),
      "Liqueur for the batch": asRead("140.7 L"),
      "Stock of the liqueur": asRead("9.3 L left of 150.0 L"),
    });
  });

  test("a shortage says how many bottles the stock is enough for", () =>
    expect(says(form({ stock_L: 100 }))["Stock of the liqueur"]).toBe(
      asRead("! 40.7 L short: enough for 10,000 of 13,400 bottles."),
    ));

  test("a stock short of the reserve alone is told apart", () =>
    // all bottles take 134 L, with the reserve 140.7
    expect(says(form({ stock_L: 134 }))["Stock of the liqueur"]).toBe(
      asRead("! 6.7 L short of the reserve, though enough for all 13,400 bottles."),
    ));

  test("a stock that nothing limits is not mentioned", () =>
    expect(Object.keys(says(form()))).not.toContain("Stock of the liqueur"));

  test("what does not fit, and where there is no room", () => {
    // 750·24/600 = 30 mL into 20
    expect(says(form({ target_gL: 24 }))["Room in the neck"]).toBe(
      asRead("! Does not fit: 10.00 mL too much."),
    );
    expect(says(form({}, { filled_mL: 780 }))["Room in the neck"]).toBe(
      "! None: more wine is left in the bottle than is wanted.",
    );
  });

  test("terms are those of the rules and the language", () => {
    const french = inputsOf(
      changed({ batch: { language: "fr" }, dosage: { kind: "concentrate", target_gL: 5 } }),
    );
    expect(says(french)["Terms permitted"]).toBe("extra brut, brut");
    const oiv = inputsOf(
      changed({ batch: { rules: "OIV" }, dosage: { kind: "concentrate", target_gL: 14, term: "extra-dry" } }),
    );
    expect(says(oiv)["Terms permitted"]).toBe("extra-dry");
  });

  test("a refusal names the form's own field", () =>
    expect(refusalInWords({ field: "dosage.target_gL", given: 1, remedy: "give more" })).toBe(
      "Sweetness wanted is 1; give more",
    ));
});
