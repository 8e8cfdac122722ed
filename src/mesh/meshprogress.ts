/** How far a step has come, from 0 to 1. */
export type Progress = (share: number) => void;
