/** The dosage bench, in the pane. Loaded when it is first looked at. */
import "./bench.css";

export { benchSection, type BenchSection } from "./section";
