import { CATALOGUE } from '../program/catalogue.ts';
import type { Program } from '../program/program.ts';
import type { Prescription } from '../progression/prescription.ts';

/**
 * A program that stands for the one a session was opened from, where its file cannot be read any
 * more: a session goes on from its own copy, whatever becomes of the file.
 */
export function sessionProgram(prescription: Prescription): Program {
  return {
    name: prescription.program,
    file: '',
    unit: prescription.unit,
    aim: prescription.aim,
    daysPerWeek: 3,
    cutFrom: null,
    rate: [0.5, 1],
    monthlyCycle: false,
    restBetween: prescription.restBetween,
    days: [],
    lifts: CATALOGUE,
    accept: {},
  };
}
