/**
 * The functions' script: every adapter, associated with its id when the script loads.
 */
import "./registry";
import "./ageing";
import "./cost";
import "./disgorging";
import "./dosage";
import "./dosage-bench";
import "./label";
import "./pressure";
import "./riddling";
import "./sugar";
import "./sweetness";
import "./tirage";
import "./tirage-pressure";
import "./tirage-readings";
