/** What if, in the pane. Loaded when it is first looked at. */
import "./variants.css";

export { variantsSection, type VariantsSection } from "./section";
