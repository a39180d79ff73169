/**
 * RIDDLING functions.
 */
import { USUAL } from "../cellar/constants";
import { RACK_PLACES, racksNeeded, riddlingHours, riddlingSchedule } from "../cellar/riddling";
import { answer, domains, given, optional } from "./arguments";

/**
 * Riddling by hand, a row for each turn: date, turn, eighths of a turn, where the mark stands, angle of the rack.
 * @customfunction RIDDLING.SCHEDULE
 * @param start_date Day of the first turn, a spreadsheet date (1 March 1900 to 31 December 9999); a time of day is dropped.
 * @param [days] Days of riddling (a whole number, 4 to 60); blank = 14.
 * @param [turns_per_day] Turns a day (a whole number, 1 to 4); blank = 1.
 * @returns rows of five cells: date; turn number; eighths of a turn, clockwise positive; mark in eighths from six o'clock; rack angle °
 * @equation an eighth one way, then a quarter the other way and back; the rack from 15° to 75° in equal steps
 * @source common practice, no source
 * @caution Bottles are under pressure: face and hand protection at every turn.
 * @example RIDDLING.SCHEDULE(46000, 4) = 46000, 1, 1, 1, 15; 46001, 2, -2, -1, 35; 46002, 3, 2, 1, 55; 46003, 4, -2, -1, 75
 */
export function riddlingScheduleRows(start_date: number, days?: number, turns_per_day?: number): number[][] {
  return answer(() =>
    riddlingSchedule(
      given(domains.dateSerial, start_date, "start_date"),
      optional(domains.riddlingDays, days, "days", USUAL.riddlingDays),
      optional(domains.turnsPerDay, turns_per_day, "turns_per_day", USUAL.turnsPerDay),
    ).map(({ date, number, eighths, mark, rackDegrees }) => [date, number, eighths, mark, rackDegrees]),
  );
}

/**
 * Racks needed for so many bottles.
 * @customfunction RIDDLING.RACKS
 * @param bottles Bottles to riddle (a whole number, 0 to 100000000).
 * @param [places] Places in a rack (a whole number, 1 to 100000); blank = 120. A cage holds 504.
 * @returns whole racks
 * @equation bottles/places, rounded up
 * @source rack 120, 60 a side, and cage 504: published practice
 * @example RIDDLING.RACKS(6600) = 55
 */
export function riddlingRacks(bottles: number, places?: number): number {
  return answer(() =>
    racksNeeded(
      given(domains.bottles, bottles, "bottles"),
      optional(domains.places, places, "places", RACK_PLACES),
    ),
  );
}

/**
 * Labour for riddling, hours.
 * @customfunction RIDDLING.HOURS
 * @param bottles Bottles to riddle (a whole number, 0 to 100000000).
 * @param turns Turns of each (a whole number, 0 to 10000).
 * @param bottles_per_hour Bottles that one person turns in an hour (more than 0, at most 1000000).
 * @returns hours
 * @equation bottles·turns/rate
 * @source arithmetic
 * @example RIDDLING.HOURS(6600, 14, 6000) = 15.4
 */
export function riddlingLabour(bottles: number, turns: number, bottles_per_hour: number): number {
  return answer(() =>
    riddlingHours(
      given(domains.bottles, bottles, "bottles"),
      given(domains.turns, turns, "turns"),
      given(domains.bottlesPerHour, bottles_per_hour, "bottles_per_hour"),
    ),
  );
}
