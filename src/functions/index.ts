/**
 * The functions' script: every adapter, associated with its id when the script loads.
 */
import "./registry";
import "./ageing";
import "./cost";
import "./disgorging";
import "./dosage";
import "./label";
import "./pressure";
import "./sugar";
import "./sweetness";
import "./tirage";
import "./tirage-pressure";
