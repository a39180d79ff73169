/**
 * Four drawings of a planned batch for the pane, each a figure with its caption and words.
 */
import type { BatchInputs } from "../../cellar/batch/fields";
import type { BatchPlan } from "../../cellar/batch/plan";
import type { Units } from "../units";
import * as cost from "./cost";
import * as neck from "./neck";
import * as pressure from "./pressure";
import * as timeline from "./timeline";
import "./drawings.css";

export type Drawing = (inputs: BatchInputs, plan: BatchPlan, units: Units) => HTMLElement;

export const pressureDrawing: Drawing = pressure.pressureDrawing;
/** Millilitres, days and money are shown as they are, whatever units were chosen. */
export const neckDrawing: Drawing = neck.neckDrawing;
export const timelineDrawing: Drawing = timeline.timelineDrawing;
export const costDrawing: Drawing = cost.costDrawing;

export const drawings = {
  pressure: pressureDrawing,
  neck: neckDrawing,
  timeline: timelineDrawing,
  cost: costDrawing,
} as const;
